/** Pitch and length of the continuity tone. It ends by itself: a lead can be left where it is. */
const hertz = 2400;
const seconds = 0.9;
const gain = 0.07;

/** The sound of continuity. Silent where the browser has no sound, or before a person has touched the page. */
export class ContinuityTone {
  private context: AudioContext | undefined;
  private sounding: OscillatorNode | undefined;

  sound(): void {
    this.hush();
    if (typeof AudioContext === 'undefined') return;
    this.context ??= new AudioContext();
    void this.context.resume().catch(() => undefined);
    const oscillator = new OscillatorNode(this.context, {type: 'triangle', frequency: hertz});
    const volume = new GainNode(this.context, {gain: 0});
    const now = this.context.currentTime;
    // short ramps: a tone cut square clicks
    volume.gain.linearRampToValueAtTime(gain, now + 0.015);
    volume.gain.setValueAtTime(gain, now + seconds - 0.03);
    volume.gain.linearRampToValueAtTime(0, now + seconds);
    oscillator.connect(volume).connect(this.context.destination);
    oscillator.start(now);
    oscillator.stop(now + seconds);
    this.sounding = oscillator;
  }

  hush(): void {
    this.sounding?.stop();
    this.sounding = undefined;
  }

  close(): void {
    this.hush();
    void this.context?.close().catch(() => undefined);
    this.context = undefined;
  }
}
