import type {ReactiveController, ReactiveControllerHost} from 'lit';
import {hangUp, studentLine, type StudentLine} from './student-line.ts';

/** Draws its element again whenever the student's line says something. */
export class LineWatch implements ReactiveController {
  line: StudentLine | undefined;
  private readonly host: ReactiveControllerHost;
  private stop: () => void = () => undefined;

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.follow();
  }

  hostDisconnected(): void {
    this.stop();
  }

  /** Takes the work back from the device that took it over. */
  takeBack(): void {
    hangUp();
    this.follow(true);
  }

  private follow(takeBack = false): void {
    this.stop();
    this.line = studentLine(takeBack);
    this.stop = this.line?.listen(() => this.host.requestUpdate()) ?? (() => undefined);
    this.host.requestUpdate();
  }
}
