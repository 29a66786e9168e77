import {expect} from '@open-wc/testing';
import {SocketBenchLink} from '../../src/pages/bench/socket-bench-link.ts';
import {StudentLine} from '../../src/pages/class/student-line.ts';
import {assignment, desk, done, opened, sockets} from './class-socket-stand-in.ts';
import {until} from './desk-in-page.ts';

const token = 'a-token-of-more-than-twenty-letters';

async function atTheBench(last = 0) {
  const hand = sockets();
  const line = new StudentLine(token, hand.make);
  const link = new SocketBenchLink(line, assignment);
  hand.newest().welcome();
  const opening = link.open();
  hand.newest().answer(opened(last));
  await opening;
  return {hand, line, link};
}

/** The line comes back by itself after a pause: the next socket is welcomed as the first was. */
async function comesBack(hand: ReturnType<typeof sockets>): Promise<void> {
  const before = hand.made.length;
  await until(() => hand.made.length > before);
  hand.newest().welcome();
}

describe('a student’s line and the bench on it', () => {
  it('says who sits here before anything else', async () => {
    const {hand, line} = await atTheBench();
    expect(hand.newest().said[0]).to.deep.equal({is: 'join', token});
    line.close();
  });

  it('numbers actions from where the server stands and shows them once they are on its disk', async () => {
    const {hand, line, link} = await atTheBench(7);
    const acting = link.act({do: 'note', text: 'hums'});
    expect(hand.newest().last('act')?.number).to.equal(8);
    hand.newest().answer(done(8));
    const answer = await acting;
    expect('view' in answer && answer.view.minutes).to.equal(8);
    line.close();
  });

  it('says again with the same number what a broken line left unanswered', async () => {
    const {hand, line, link} = await atTheBench();
    const acting = link.act({do: 'note', text: 'hums'});
    hand.newest().lose();
    expect(line.state.is).to.equal('lost');
    await comesBack(hand);
    // not before it is known how the call stands over there
    expect(hand.newest().last('act')).to.equal(undefined);
    hand.newest().answer(opened(0));
    expect(hand.newest().last('act')?.number).to.equal(1);
    hand.newest().answer(done(1));
    expect(await acting).to.have.property('view');
    line.close();
  });

  it('does not say again what had arrived before the line broke', async () => {
    const {hand, line, link} = await atTheBench();
    const acting = link.act({do: 'note', text: 'hums'});
    hand.newest().lose();
    await comesBack(hand);
    hand.newest().answer(opened(1));
    const answer = await acting;
    expect('view' in answer && answer.view.minutes).to.equal(1);
    expect(hand.newest().last('act')).to.equal(undefined);
    line.close();
  });

  it('keeps what is done while the network is away and sends it when it is back', async () => {
    const {hand, line, link} = await atTheBench();
    hand.newest().lose();
    const acting = link.act({do: 'note', text: 'hums'});
    await comesBack(hand);
    hand.newest().answer(opened(0));
    expect(hand.newest().last('act')?.number).to.equal(1);
    hand.newest().answer(done(1));
    expect(await acting).to.have.property('view');
    line.close();
  });

  it('uses the number of a refused action again', async () => {
    const {hand, line, link} = await atTheBench();
    const refused = link.act({do: 'open-cover', enclosure: 'nowhere'});
    hand
      .newest()
      .answer({is: 'refused', assignment, number: 1, sentence: 'There is no such cover.'});
    expect(await refused).to.deep.equal({refused: 'There is no such cover.'});
    void link.act({do: 'note', text: 'hums'});
    expect(hand.newest().last('act')?.number).to.equal(1);
    line.close();
  });

  it('stops for good when another device takes over, and says so to whoever waits', async () => {
    const {hand, line, link} = await atTheBench();
    const acting = link.act({do: 'note', text: 'hums'});
    const sockets = hand.made.length;
    hand.newest().answer({is: 'taken-over'});
    hand.newest().lose(4001);
    expect(line.state.is).to.equal('taken-over');
    let said = '';
    await acting.catch((error: Error) => (said = error.message));
    expect(said).to.contain('no longer at work');
    expect(hand.made.length).to.equal(sockets);
    line.close();
  });

  it('takes the work back once, when a person wants it; a lost network later takes nothing from a newer device', async () => {
    const hand = sockets();
    const line = new StudentLine(token, hand.make, true);
    hand.newest().welcome();
    expect(hand.newest().said[0]).to.deep.equal({is: 'join', token, takeBack: true});
    hand.newest().lose();
    await comesBack(hand);
    expect(hand.newest().said[0]).to.deep.equal({is: 'join', token});
    line.close();
  });

  it('asks a question again after a lost line only where that changes nothing', async () => {
    const {hand, line, link} = await atTheBench();
    const catalogue = link.catalogue();
    const hiding = line.ask({is: 'hide', assignment, fault: 'K1:coil-open'});
    hand.newest().lose();
    await comesBack(hand);
    expect(hand.newest().last('hide')).to.equal(undefined);
    let said = '';
    await hiding.catch((error: Error) => (said = error.message));
    expect(said).to.contain('connection was lost');
    const ask = hand.newest().last('catalogue')?.ask ?? -1;
    hand.newest().answer({is: 'told', ask, told: {what: 'catalogue', lines: []}});
    expect(await catalogue).to.deep.equal([]);
    line.close();
  });

  it('puts what the coach had said into the log before the call goes on', async () => {
    const hand = sockets();
    const line = new StudentLine(token, hand.make);
    const link = new SocketBenchLink(line, assignment, true);
    hand.newest().welcome();
    const opening = link.open();
    const hintOwed = {level: 2, text: 'Read at the contactor.'} as const;
    hand.newest().answer({...opened(3), hintOwed});
    expect(hand.newest().last('act')).to.deep.include({
      number: 4,
      action: {do: 'hint', ...hintOwed},
    });
    hand.newest().answer(done(4));
    expect((await opening).minutes).to.equal(4);
    line.close();
  });

  it('knows a call as begun, and its time as running, from when it is opened', async () => {
    const {hand, line} = await atTheBench();
    expect(line.timeLeft(assignment)).to.equal(undefined);
    const [item] = line.desk?.items ?? [];
    hand.newest().answer({
      is: 'desk',
      desk: {...desk, items: [{...item, stage: 'new', limitMinutes: 30}]},
    });
    expect(line.desk?.items[0].stage).to.equal('new');
    hand.newest().answer({...opened(0), leftMs: 1_800_000});
    expect(line.desk?.items[0].stage).to.equal('working');
    expect(line.timeLeft(assignment)?.leftMs).to.equal(1_800_000);
    line.close();
  });

  it('tells the server’s reason when a call cannot be opened', async () => {
    const hand = sockets();
    const line = new StudentLine(token, hand.make);
    const link = new SocketBenchLink(line, assignment);
    hand.newest().welcome();
    const opening = link.open();
    hand.newest().answer({is: 'refused', assignment, number: 0, sentence: 'The set is closed.'});
    let said = '';
    await opening.catch((error: Error) => (said = error.message));
    expect(said).to.equal('The set is closed.');
    line.close();
  });
});
