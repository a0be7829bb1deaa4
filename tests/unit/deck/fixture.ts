/**
 * A small, complete and faultless deck as text: every part and every optional property of the format is
 * used once, its tables have neither gaps nor conflicts, and the loader finds nothing to say about it.
 */
export const fixtureDeckText: string = `# A short final to a raft on a lake: invented, and not for flight.
format: gatecall-deck/1
id: raft-landing
title: Landing on the raft
version: 0.3.1
language: en-GB
summary: Three gates, a checklist and the corrections on the way down.
cautions:
  - Invented, not for flight.
reference: { label: Raft, course: the raft's axis, height: altitude }
defaultSource: notes
sources:
  - { id: notes, title: Notes on the raft, kind: invented }
  - { id: trade, title: Common practice without a source, kind: common practice }
  - { id: book, title: A printed manual, kind: published, edition: "2", place: Chapter 3 }

quantities:
  - { id: altitude, label: Altitude, spoken: altitude, unit: ft, range: [0, 1000], step: 5, above: high, below: low }
  - id: closure
    label: Closure
    unit: kt
    range: [-20, 100]
    step: 1
    above: fast
    below: slow
    words:
      - { when: "< 0", say: falling back }
      - { when: "> 45", say: closing fast }
  - { id: sink, label: Sink, unit: ft/min, range: [-500, 1500], step: 10 }
  - { id: to-go, label: Distance to go, unit: ft, range: [-500, 9000], step: 10 }
  - { id: aoa, label: Angle of attack, unit: aoa, range: [0, 20], step: 0.5 }
  - { id: wind, label: Wind, unit: kt, range: [0, 40], step: 1 }
day:
  - { quantity: wind, default: 10 }

gates:
  - id: far
    label: Far gate
    cue: The raft as wide as a thumb.
    position: { aheadFt: -6000, rightFt: -200, courseDeg: 0 }
    detect: { kind: distance, ft: 6000 }
    values:
      altitude: { target: 600, desired: [580, 620], adequate: [550, 660], floor: 500, source: book,
                  because: Lower than this the trees hide the raft. }
      closure: { target: 60, desired: [57, 63], adequate: [50, 70], ceiling: 80 }
      aoa: { target: 10, desired: [9.5, 10.5], adequate: [9, 11.5], critical: true }
  - id: middle
    label: Middle gate
    cue: Half way, the jetty abeam.
    position: { aheadFt: -2500, rightFt: 0, courseDeg: 0 }
    detect: { kind: bearing, relativeDeg: 270 }
    values:
      altitude: { target: 300, desired: [285, 315], adequate: [270, 340] }
      sink: { target: 400, desired: [350, 450], adequate: [300, 500] }
  - id: near
    label: Near gate
    cue: The edge of the raft under the nose.
    position: { aheadFt: -300, rightFt: 0, courseDeg: 0 }
    detect: { kind: falling, quantity: altitude, value: 80 }
    values:
      altitude: { target: 80, desired: [70, 90], adequate: [60, 110], floor: 50 }
      closure: { target: 10, desired: [8, 12], adequate: [5, 15], ceiling: 20 }
  - id: away
    label: Away again
    cue: Climbing over the far shore.
    position: { aheadFt: 2000, rightFt: 0, courseDeg: 0 }
    detect: { kind: rising, quantity: altitude, value: 200 }
    values:
      altitude: { target: 200, desired: [180, 250], adequate: [150, 300] }
  - id: turned
    label: Turned away
    cue: The raft behind the tail.
    position: { aheadFt: 4000, rightFt: 2000, courseDeg: 90 }
    detect: { kind: turned, deg: 80 }
    values:
      altitude: { target: 600, desired: [580, 620], adequate: [550, 660] }

checklists:
  - id: final-checks
    label: Final checks
    completeBy: middle
    source: trade
    because: After it both hands are busy.
    items:
      - { id: floats, challenge: Floats, response: "Down, two green", critical: true, because: The keel is soft. }
      - { id: door, challenge: Door, response: Unlatched }
      - { id: harness, challenge: Harness, response: Tight }

controls:
  - id: pitch
    label: Pitch
    axis: horizontal
    actions:
      - { id: nose-down, label: Nose down, opposes: nose-up, effects: { closure: 1.5 } }
      - { id: hold-nose, label: Hold, spoken: hold the nose, neutral: true }
      - { id: nose-up, label: Nose up, opposes: nose-down, effects: { closure: -1.5 } }
  - id: power
    label: Power
    axis: vertical
    actions:
      - { id: less-power, label: Less, spoken: less power, opposes: more-power, effects: { sink: 50 } }
      - { id: hold-power, label: Hold, spoken: hold power, neutral: true }
      - { id: more-power, label: More, spoken: more power, effects: { sink: -50 } }
  - id: call
    label: Call
    actions:
      - { id: continue, label: Continue, neutral: true }
      - { id: go-around, label: Go around, opposes: continue }

phases:
  - id: approach
    label: Far to middle
    from: far
    to: middle
    cue: On the approach
    windowS: 6
    state: { to-go: [2500, 6000], altitude: [200, 800], closure: [20, 90], sink: [0, 1000] }
    controls: [pitch, power, call]
    rates:
      altitude: { factors: { sink: -0.016667 } }
      to-go: { factors: { closure: -1.6878 } }
      closure: { constant: -0.5 }
    limits:
      sink: { ceiling: 800, because: The engine answers late., source: trade }
  - id: arrival
    label: Middle to near
    from: middle
    to: near
    windowS: 4
    state: { altitude: [40, 400], closure: [-10, 60], sink: [-200, 800] }
    controls: [pitch, power, call]
    limits:
      closure: { floor: 0 }

tables:
  - id: far-speed
    label: Pitch by closure, far out
    phases: [approach]
    control: pitch
    hit: unique
    inputs: [closure]
    source: book
    rules:
      - { id: far-fast, when: { closure: "> 70" }, then: nose-up, because: The nose is the only brake. }
      - { id: far-fair, when: { closure: "[50..70]" }, then: hold-nose, because: The closure fits. }
      - { id: far-slow, when: { closure: "< 50" }, then: nose-down, because: Stopping short of the raft. }
  - id: near-speed
    label: Pitch by closure, close in
    phases: [arrival]
    control: pitch
    hit: any
    inputs: [closure, altitude]
    rules:
      - { id: near-fast, when: { closure: "> 30" }, then: nose-up, because: Too fast to stop. }
      - { id: near-low-fast, when: { closure: "> 30", altitude: "< 150" }, then: nose-up, critical: true,
          because: Too fast and too low. }
      - { id: near-fair, when: { closure: "[5..30]" }, then: hold-nose, because: The closure fits. }
      - { id: near-slow, when: { closure: "< 5" }, then: nose-down, because: Falling back. }
  - id: far-height
    label: Power by height, far out
    phases: [approach]
    control: power
    hit: first
    inputs: [altitude, sink]
    rules:
      - { id: falling, when: { sink: "> 600" }, then: more-power, because: Stop the sink first. }
      - { id: high, when: { altitude: "> 650" }, then: less-power, because: High stays high. }
      - { id: low, when: { altitude: "< 350" }, then: more-power, because: Low gets lower. }
      - { id: steady, when: {}, then: hold-power, because: Leave it. }
  - id: near-height
    label: Power by height, close in
    phases: [arrival]
    control: power
    hit: priority
    priority: [more-power, hold-power, less-power]
    inputs: [altitude, sink]
    rules:
      - { id: sinking, when: { sink: "> 400" }, then: more-power, because: Too much sink this low. }
      - { id: ballooning, when: { sink: "< 0", altitude: "> 100" }, then: less-power, because: Climbing away. }
      - { id: leave, when: { sink: "[0..400]" }, then: hold-power, because: The sink fits. }
      - { id: leave-low, when: { altitude: "<= 100" }, then: hold-power, because: No less power this low. }
  - id: abandon
    label: Go around
    phases: [approach, arrival]
    control: call
    overriding: true
    hit: any
    inputs: [altitude]
    rules:
      - { id: too-low, when: { altitude: "< 50" }, then: go-around, critical: true, because: Too low to go on. }
      - { id: too-high, when: { altitude: "> 750" }, then: go-around, because: Too high to come down. }

plates:
  - id: raft-plan
    label: The raft
    size: [200, 100]
    unit: m
    source: book
    reference: { at: [100, 50], courseDeg: 90 }
    shapes:
      - { shape: outline, points: [[10, 10], [190, 10], [190, 90], [10, 90]] }
      - { shape: line, points: [[10, 50], [190, 50]], dashed: true }
      - { shape: circle, at: [100, 50], radius: 8 }
      - { shape: label, at: [20, 20], text: Shore side }
    spots:
      - { id: centre, label: The centre, at: [100, 50], desiredWithin: 5, adequateWithin: 12, critical: true,
          because: The raft is level only there. }
      - { id: bollard, label: The bollard, at: [180, 80], desiredWithin: 4, adequateWithin: 10 }

notes:
  - id: raft-height
    ask: How high does the raft lie above the water?
    answer: 3 ft
    accept: ["3", three feet]
    gate: near
    critical: true
    source: trade
    because: Floats need no more.
  - id: first-correction
    ask: "High and closing fast: which correction comes first?"
    answer: Nose up
    choices: [Less power, Both together]

charts:
  - id: least-closure
    label: Least closure
    unit: kt
    source: book
    because: Slower than this the floats dig in.
    inputs:
      - { label: Load, unit: kg, at: [0, 150, 400], trend: rising }
      - { label: Wave height, unit: m, at: [0, 0.5, 1], trend: falling }
    rows:
      - [20, 18, 15]
      - [24, 21, 15]
      - [30, 28.5, 22]
  - { id: gust-share, label: Share of the gust, unit: kt, inputs: [{ label: Gust, unit: kt, at: [0, 10, 30] }], values: [0, 5, 10] }

flying:
  airspeed: closure
  closure: closure
  most: { bankDeg: 40, loadFactor: 1.4, sinkFtMin: 600, climbFtMin: 500, decelerationKtS: 3, accelerationKtS: 2 }
  source: book
  legs:
    - { from: far, seconds: 35, because: The water is flat. }
    - { from: middle, seconds: 20, most: { sinkFtMin: 900 } }
    - { from: near, seconds: 30 }
    - { from: away, seconds: 60 }
`;
