import type {WebSocket} from 'ws';
import {heatOf} from '../../classroom/heat-map.ts';
import {
  wallRequest,
  type Wall,
  type WallAnswer,
  type WallRequest,
} from '../../classroom/protocol/wall-messages.ts';
import {closeCodes} from '../../classroom/protocol/student-messages.ts';
import {ClassSocket} from './class-socket.ts';
import {joinUrl} from './join-url.ts';
import type {School} from './school.ts';
import {liveRowsOf} from './live-view.ts';
import {pollFor} from './student-desk.ts';

const rules = {schema: wallRequest, longest: 1024, perSecond: 2, atOnce: 10};
const sendEveryMs = 1000;

/** The wall view: what everybody in the room may see. */
export class WallSocket {
  private readonly school: School;
  private readonly line: ClassSocket<WallRequest, WallAnswer>;
  private readonly stopHearing: () => void;
  private token?: string;
  private classId?: string;
  private due?: NodeJS.Timeout;

  constructor(school: School, socket: WebSocket) {
    this.school = school;
    this.line = new ClassSocket<WallRequest, WallAnswer>(
      socket,
      rules,
      (request) => this.handle(request),
      () => {
        this.stopHearing();
        clearTimeout(this.due);
      },
    );
    this.stopHearing = school.bus.subscribe((message) => {
      if (message.class === this.classId) this.soon();
    });
  }

  private async handle(request: WallRequest): Promise<void> {
    if (request.is === 'ping') return this.line.send({is: 'pong'});
    this.token = request.token;
    await this.sendWall();
  }

  private soon(): void {
    this.due ??= setTimeout(() => {
      this.due = undefined;
      void this.sendWall().catch(() =>
        this.line.end(closeCodes.tryLater, 'The server could not read its records. Try again.'),
      );
    }, sendEveryMs);
    this.due.unref();
  }

  private async sendWall(): Promise<void> {
    // asked for each time: a new wall link ends this one
    const found = await this.school.classes.byWall(this.token ?? '');
    if (!found) {
      return this.line.end(
        closeCodes.notKnown,
        'This wall is not shown any more. Open it again from the class page.',
      );
    }
    this.line.welcome();
    this.classId = found.id;
    this.line.send({is: 'wall', wall: await this.wallOf(found)});
  }

  private async wallOf(found: {
    id: string;
    name: string;
    code: string;
    names_on_wall: number;
  }): Promise<Wall> {
    const {school} = this;
    const names = found.names_on_wall === 1;
    const [rows, poll] = await Promise.all([
      liveRowsOf(school, found.id),
      school.talk.currentPoll(found.id),
    ]);
    const progress = rows.map((row): Wall['progress'][number] => ({
      ...(names ? {name: row.name} : {}),
      stage: stageOf(row.stage, row.online),
      readings: row.readings,
    }));
    // without names the order would tell who is who from one moment to the next
    const order = {finished: 0, working: 1, waiting: 2, away: 3};
    if (names) progress.sort((a, b) => (a.name ?? '').localeCompare(b.name ?? ''));
    else progress.sort((a, b) => order[a.stage] - order[b.stage] || b.readings - a.readings);
    return {
      className: found.name,
      code: found.code,
      joinUrl: joinUrl(school, found.code),
      names,
      progress,
      heat: await heatMaps(school, found.id),
      ...(poll ? {poll: await pollFor(school, poll)} : {}),
    };
  }
}

function stageOf(stage: string | undefined, online: boolean): Wall['progress'][number]['stage'] {
  if (stage === 'named' || stage === 'cleared' || stage === 'given-up' || stage === 'done')
    return 'finished';
  if (stage === 'working') return 'working';
  return online ? 'waiting' : 'away';
}

/** Where the class has probed, of the sets that are open. */
async function heatMaps(school: School, classId: string): Promise<Wall['heat']> {
  const open = (await school.work.sets(classId)).filter(
    ({state, kind}) => state === 'open' && kind !== 'hookup',
  );
  const units = [...new Set(open.map(({unit}) => unit))];
  const readings = await school.work.readingsOf(open.map(({id}) => id));
  return units.map((unit) =>
    heatOf(
      unit,
      school.content.unit(unit).title,
      readings.filter((each) => each.unit === unit).map(({action}) => action),
    ),
  );
}
