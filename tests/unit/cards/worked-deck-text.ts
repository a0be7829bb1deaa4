/** A small deck whose day is worked out: by the wind, by formulas and by a chart. */
export const workedDeckText: string = `# A short final to a barge: invented, and not for flight.
format: gatecall-deck/1
id: barge-landing
title: Landing on the barge
version: 1.0.0
language: en
cautions: ["Invented, not for flight."]
reference: { label: Barge, course: the barge's course, height: altitude }
defaultSource: notes
sources:
  - { id: notes, title: Notes on the barge, kind: invented }
  - { id: book, title: A printed manual, kind: published }
quantities:
  - { id: altitude, label: Altitude, unit: ft, range: [0, 2000], step: 10 }
  - { id: closure, label: Closure, unit: kt, range: [-20, 120], step: 1, above: fast, below: slow }
  - { id: wind-speed, label: True wind, unit: kt, range: [0, 40], step: 1 }
  - { id: wind-angle, label: True wind off the bow, unit: deg, range: [-180, 180], step: 5, above: from the right, below: from the left }
  - { id: barge-speed, label: Barge's speed, spoken: barge's speed, unit: kt, range: [0, 15], step: 1 }
  - { id: wind-over-deck, label: Wind over deck, unit: kt, range: [-50, 60], step: 1 }
  - { id: pressure-altitude, label: Pressure altitude, unit: ft, range: [-1000, 4000], step: 100 }
  - { id: temperature, label: Temperature, unit: degC, range: [-40, 60], step: 1 }
  - { id: load, label: Load, unit: kg, range: [0, 2000], step: 50 }
  - { id: lift, label: Vertical lift, unit: kg, range: [0, 20000], step: 50 }
  - { id: margin, label: Margin, unit: kg, range: [-5000, 5000], step: 50, above: too much, below: too little }
day:
  - { quantity: wind-speed, default: 10 }
  - { quantity: wind-angle, default: 0 }
  - { quantity: barge-speed, default: 5 }
  - { quantity: pressure-altitude, default: 300 }
  - { quantity: temperature, default: 30 }
  - { quantity: load, default: 600 }
wind: { speed: wind-speed, angle: wind-angle, ship: barge-speed, along: wind-over-deck }
formulas:
  - { quantity: closure, expression: 60 kt - wind_over_deck, because: The airspeed on the final is 60 kt., source: book }
  - { quantity: lift, expression: "lift(pressure_altitude, temperature)" }
  - { quantity: margin, expression: lift - 7200 kg - load }
charts:
  - id: lift
    label: Vertical lift
    unit: kg
    inputs:
      - { label: Pressure altitude, unit: ft, at: [0, 1000, 3000], trend: falling }
      - { label: Temperature, unit: degC, at: [-10, 15, 45], trend: falling }
    rows:
      - [9000, 8800, 8200]
      - [8900, 8600, 7900]
      - [8500, 8200, 7300]
gates:
  - id: far
    label: Far gate
    cue: The barge as wide as a thumb.
    position: { aheadFt: -3000, rightFt: 0, courseDeg: 0 }
    values:
      altitude: { target: 300, desired: [280, 320], adequate: [250, 350], floor: 200 }
      closure: { target: 60 kt - wind_over_deck, desired: [57 kt - wind_over_deck, 63 kt - wind_over_deck],
                 adequate: [52 kt - wind_over_deck, 68 kt - wind_over_deck] }
worked:
  - id: final-closure
    label: Closure on the final
    ask: What closure does the day leave you?
    quantity: closure
    gate: far
    draw: { wind-speed: [0, 25], barge-speed: [0, 12] }
    desired: 1
    adequate: 4
  - id: hover-margin
    label: Hover margin
    ask: How much lift is left for the hover?
    quantity: margin
    draw: { temperature: [20, 60], load: [0, 1500] }
    desired: 50
    adequate: 150
    windowS: 45
    critical: true
    because: Below nothing it sinks.
    source: book
  - id: over-deck
    label: Wind over deck
    ask: What wind is there over the deck?
    quantity: wind-over-deck
    draw: { wind-speed: [0, 30], wind-angle: [-60, 60] }
    desired: 1
    adequate: 3
`;
