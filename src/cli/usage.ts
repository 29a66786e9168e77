/** What `rungbench --help` prints. */
export const usage = `rungbench: read and check the units of the tutor from the command line.

  rungbench check FILE…                 check unit files; exit code 1 and every mistake, with its place
  rungbench faults UNIT [--json] [--complaints] [--difficulty]
                                        list the catalogue of faults with their ids; --difficulty: readings and
                                        minutes that the planner needs from the complaint alone (takes a while)
  rungbench hookup TASK WIRES.yaml [--json]
                                        judge wires against a wiring task; exit code 1 when they are wrong
  rungbench read UNIT [STATE] --meter FUNCTION --red POINT --black POINT [METER] [--json]
  rungbench read UNIT [STATE] --meter clamp-amps|clamp-hertz --wire WIRE [METER] [--json]
                                        what the meter shows
  rungbench netlist UNIT [STATE] [--dc] the solved state's network as a SPICE netlist
  rungbench nodes UNIT [STATE] [--json] [--dc]
                                        node voltages to earth under the netlist's node names

  rungbench suspects UNIT --log FILE [--json] [--all] [--pairs]
                                        what a field log leaves open, and the best readings next
  rungbench grade ATTEMPT.json [--unit UNIT] [--json]
                                        how an exported attempt was reasoned

UNIT       a shipped unit (such as practice-panel or split-heat-pump) or a unit file (./my-unit.yaml)
TASK       a shipped wiring task (lamp-and-switch, three-safeties …) or a task file (./my-task.yaml)
FUNCTION   ac-volts, dc-volts, low-impedance-volts, ohms, continuity, clamp-amps, hertz, clamp-hertz,
           capacitance, dc-microamps (in series: see --do microamps)
METER      --seed N           the meter of attempt N, with its own error; without it the meter is exact
           --record 30s       let time pass after the reading, and tell the least and the most shown
           --error            the limit of error of the reading, and its arithmetic
           --flaw FLAW        the meter itself: sound, weak-battery, broken-lead, blown-fuse
POINT      PART.TERMINAL (K3.A1), a lifted wire end (W12.from), or earth

STATE is any number of these, done in the order given; the unit starts with power on and every control at
rest, and covers are no hindrance here:
  --fault ID                 a fault that is there from the start (see rungbench faults)
  --do TS.mode=cool          set a control: PART.CONTROL=VALUE
  --do CB1.position=off      … a breaker (on, off) or a disconnect (closed, open)
  --do PART.reset=press      … press a button, where a part has one
  --do plant.outdoorDegF=95  set a value of the room, the weather or the plant
  --do wait=30s              let time pass: 500ms, 30s, 10m, 2h
  --do lift=W12.from         lift a wire end off its terminal
  --do land=W12.from         put it back
  --do jumper=K3.A1,TB2.C    lay a jumper between two points
  --do remove-jumper=K3.A1,TB2.C
  --do microamps=IB1.FS,W30.from
                             leave the meter's microamps leads in a gap, so that the circuit closes through them
  --do discharge=C2.C,C2.HERM
                             lay a bleed resistor across a capacitor until it is empty
  --do open=outdoor-unit     take a cover off; close=outdoor-unit puts it on
  --do lock=DS2              hang a lock on an isolating switch that is open; unlock=DS2

FILE is an exported attempt, or a field log of your own:
  {"format": "rungbench-log", "version": 1, "unit": "practice-panel", "log": [
    {"do": "set", "target": "S1.position", "value": "on"},
    {"do": "read", "red": "HPS.1", "black": "TB2.C", "shows": 25.8}]}
with the actions of an attempt; "shows" is volts, ohms, amps, hertz or farads, "OL", or "hazard" (warning triangle).

Exit codes: 0 done, 1 the answer is no (mistakes found), 2 the command line is wrong.

Example: cooling is called for, the high-pressure switch is stuck open. What is there across it?
  rungbench read split-heat-pump --fault HPS:stuck-open --do plant.roomDegF=80 --do TS.mode=cool \\
    --do wait=1m --meter ac-volts --red HPS.1 --black HPS.2
`;
