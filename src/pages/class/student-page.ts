import {LitElement, html, type TemplateResult} from 'lit';
import type {Desk, DeskItem} from '../../classroom/protocol/student-messages.ts';
import {classHref} from './class-place.ts';
import './ended-line.element.ts';
import './line-notice.element.ts';
import {LineWatch} from './line-watch.ts';
import type {StudentLine} from './student-line.ts';

/**
 * A page that a student who has joined sees: says when this device is no longer the one at work, when the line is lost,
 * and that the class is being joined; shows the student's desk, or one thing on it, once it is there.
 */
export abstract class StudentPage extends LitElement {
  protected readonly watch = new LineWatch(this);

  /** Heading until the desk is here. */
  protected abstract readonly joiningTitle: string;
  /** What the student has before them. */
  protected abstract renderDesk(desk: Desk, line: StudentLine): TemplateResult;

  override render(): TemplateResult {
    const {line} = this.watch;
    if (!line || line.state.is === 'taken-over' || line.state.is === 'not-known') {
      return html`<rb-ended-line
        class="standing"
        .state=${line?.state}
        @taken-back=${() => this.watch.takeBack()}
      ></rb-ended-line>`;
    }
    const {desk} = line;
    return desk ? this.renderDesk(desk, line) : this.renderJoining(line);
  }

  /** For a page of one thing: the thing itself; undefined while it is not there, or not this student's. */
  protected itemOf(assignment: string, kind: DeskItem['kind']): DeskItem | undefined {
    return this.watch.line?.desk?.items.find(
      (item) => item.assignment === assignment && item.kind === kind,
    );
  }

  protected renderNotice(line: StudentLine): TemplateResult {
    return html`<rb-line-notice .state=${line.state}></rb-line-notice>`;
  }

  protected renderNotThere(): TemplateResult {
    return html`<div class="standing stack">
      <h1 tabindex="-1">This is not on your desk</h1>
      <p class="lead">It may belong to somebody else, or have been taken away.</p>
      <p class="row"><a class="button first" href=${classHref({at: 'seat'})}>To your desk</a></p>
    </div>`;
  }

  private renderJoining(line: StudentLine): TemplateResult {
    return html`<div>
      ${this.renderNotice(line)}
      <div class="standing">
        <h1 tabindex="-1">${this.joiningTitle}</h1>
        <p class="quiet" role="status">Joining your class…</p>
      </div>
    </div>`;
  }
}
