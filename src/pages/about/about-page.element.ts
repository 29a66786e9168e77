import {LitElement, css, html} from 'lit';
import {customElement} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';

/** Safety, and what the tutor is and is not. */
@customElement('rb-about-page')
export class RbAboutPage extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .order {
        border-top: 1px solid var(--rule-strong);
        counter-reset: order;
      }

      .order li {
        display: grid;
        grid-template-columns: 2.5rem minmax(0, 1fr);
        padding: var(--space-2) 0;
        border-bottom: 1px solid var(--rule);
        max-width: none;
        counter-increment: order;
      }

      .order li::before {
        content: counter(order);
        font: 700 var(--text-m) / 1.5 var(--font-mono);
      }

      .order p {
        max-width: var(--measure);
      }

      .pair {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-4) var(--space-6);
      }

      .pair li {
        padding: var(--space-2) 0;
        border-top: 1px solid var(--rule);
      }

      @media (max-width: 720px) {
        .pair {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  override render() {
    return html`
      <div class="stack">
        <h1 tabindex="-1">Safety comes before the reading</h1>
        <p class="lead">
          Rungbench is practice for a supervised lab. It is no licence to work on equipment, and
          nothing it says replaces the people and papers that decide on a job.
        </p>
        <p class="note danger">
          <strong>Danger.</strong>Heating and cooling equipment holds voltages that kill, capacitors
          that stay charged after the power is off, and parts that start by themselves. Never work
          on it alone while you learn.
        </p>
      </div>

      <section class="section" aria-labelledby="who">
        <span class="no" aria-hidden="true">1</span>
        <div class="body stack">
          <h2 id="who">Who decides</h2>
          <p>Where this tutor and any of these disagree, they are right, in this order:</p>
          <ol class="order">
            <li>
              <p>
                <b>The law where you are</b>: the electrical code as adopted there, the rules for
                refrigerants and fuel gas, and the rules on safety at work.
              </p>
            </li>
            <li>
              <p>
                <b>Your employer or school</b>: their lock-out procedure, their rules on live work
                and protective equipment.
              </p>
            </li>
            <li>
              <p>
                <b>The manufacturer</b>: the instructions and the wiring diagram of that unit, and
                of your meter.
              </p>
            </li>
            <li>
              <p><b>The licensed or qualified person</b> who supervises you.</p>
            </li>
          </ol>
        </div>
      </section>

      <section class="section" aria-labelledby="dead">
        <span class="no" aria-hidden="true">2</span>
        <div class="body stack">
          <h2 id="dead">Before you touch: isolate and prove it dead</h2>
          <ol class="order">
            <li>
              <p>
                <b>Find every source.</b> A unit can have more than one: line voltage indoors and
                out, a control voltage from elsewhere, a capacitor.
              </p>
            </li>
            <li>
              <p><b>Open the disconnect</b> or breaker with your own hand, standing to its side.</p>
            </li>
            <li>
              <p><b>Lock and tag it.</b> Your lock, your key, your name.</p>
            </li>
            <li>
              <p><b>Test the meter on a source that you know is live.</b></p>
            </li>
            <li>
              <p>
                <b>Test the circuit dead</b>: every conductor to every other, and each one to
                ground.
              </p>
            </li>
            <li>
              <p>
                <b>Test the meter on the live source again.</b> Only now do you know that it would
                have told you.
              </p>
            </li>
            <li>
              <p>
                <b>Discharge capacitors</b> as the manufacturer says, then measure that they are.
              </p>
            </li>
          </ol>
        </div>
      </section>

      <section class="section" aria-labelledby="live">
        <span class="no" aria-hidden="true">3</span>
        <div class="body stack">
          <h2 id="live">When a reading must be taken live</h2>
          <ol class="order">
            <li>
              <p>
                <b>Only if it cannot be taken dead</b>, and only if you are qualified and allowed
                to.
              </p>
            </li>
            <li>
              <p>
                <b>Meter and leads rated</b> for the voltage and the place; look at both for damage
                first.
              </p>
            </li>
            <li>
              <p>
                <b>Wear what the task’s risk assessment asks for.</b> No rings, no loose metal, dry
                hands and floor.
              </p>
            </li>
            <li>
              <p>
                <b>One hand where you can</b>; the black lead clipped on, the other hand away from
                metal.
              </p>
            </li>
            <li>
              <p>
                <b>Choose the function before the leads go down.</b> Ohms and continuity are for
                dead circuits only.
              </p>
            </li>
            <li>
              <p>
                <b>Never bypass a safety to make a unit run</b> and leave it so. A jumper is for a
                moment’s test, and it comes off.
              </p>
            </li>
          </ol>
        </div>
      </section>

      <section class="section" aria-labelledby="what">
        <span class="no" aria-hidden="true">4</span>
        <div class="body">
          <h2 id="what">What this tutor is, and is not</h2>
          <div class="pair">
            <div>
              <h3>It is</h3>
              <ul>
                <li>
                  A calculation of the unit’s whole electrical network, with your fault, your meter
                  and the insulation’s leakage in it, made anew for every reading.
                </li>
                <li>
                  A place to make mistakes that would hurt on real equipment, and to be told about
                  them.
                </li>
                <li>
                  Open to checking: the command line prints the network, so that any circuit solver
                  can be asked for a second opinion.
                </li>
              </ul>
            </div>
            <div>
              <h3>It is not</h3>
              <ul>
                <li>
                  A copy of any unit on the market. Units and scenarios are invented; yours will
                  differ.
                </li>
                <li>
                  A substitute for hands on equipment under a teacher’s eye, or for the
                  manufacturer’s diagram.
                </li>
                <li>
                  A lock. A sealed fault cannot be read in its link, but someone who is determined
                  and can program could open it.
                </li>
              </ul>
            </div>
          </div>
        </div>
      </section>

      <section class="section" aria-labelledby="kept">
        <span class="no" aria-hidden="true">5</span>
        <div class="body stack">
          <h2 id="kept">What is kept, and where</h2>
          <p>
            Your calls, the units you opened and your theme are kept in this browser on this device,
            and nowhere else. Nothing is sent to anyone. You can export a call, or delete it, in the
            <a href="#/history">history</a>.
          </p>
        </div>
      </section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-about-page': RbAboutPage;
  }
}
