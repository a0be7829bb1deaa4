/**
 * Flying beside a ship by fine steps over the sea: the aeroplane moves through air that moves, the ship moves
 * on her own; only at the end is one seen from the other. The independent path for turns seen from a ship:
 * it shares no code with them. Midpoint rule. 1 kt = 1852/3600 m/s, 1 ft = 0.3048 m, g = 9.80665 m/s².
 */
const knot = 1852 / 3600;
const foot = 0.3048;
const gravity = 9.80665;
const radian = Math.PI / 180;

export interface Sea {
  readonly windKt: number;
  /** By the compass, where it comes from. */
  readonly windFromDeg: number;
  readonly shipKt: number;
  readonly shipCourseDeg: number;
}

/** Seen from the ship; course through the air, off the ship's. */
export interface Seen {
  readonly aheadFt: number;
  readonly rightFt: number;
  readonly courseDeg: number;
}

export interface Flight {
  readonly seconds: number;
  /** Airspeed at the beginning and the end, changing evenly with time between. */
  readonly airspeedKt: readonly [number, number];
  /** Positive to the right; 0 flies straight on. */
  readonly bankDeg: number;
}

export interface Flown extends Seen {
  /** Along the path as seen from the ship. */
  readonly pathFt: number;
  /** Over the deck, at the end. */
  readonly trackDeg: number;
}

/** @param steps how fine. */
export function fly(from: Seen, flight: Flight, sea: Sea, steps = 4000): Flown {
  const course = sea.shipCourseDeg * radian;
  const bow = { north: Math.cos(course), east: Math.sin(course) };
  const wind = {
    north: -sea.windKt * knot * Math.cos(sea.windFromDeg * radian),
    east: -sea.windKt * knot * Math.sin(sea.windFromDeg * radian),
  };
  let ship = { north: 0, east: 0 };
  let plane = {
    north: (from.aheadFt * bow.north - from.rightFt * bow.east) * foot,
    east: (from.aheadFt * bow.east + from.rightFt * bow.north) * foot,
  };
  let heading = (from.courseDeg + sea.shipCourseDeg) * radian;
  const dt = flight.seconds / steps;
  const speedAt = (t: number) => {
    const share = flight.seconds === 0 ? 0 : t / flight.seconds;
    return (flight.airspeedKt[0] + (flight.airspeedKt[1] - flight.airspeedKt[0]) * share) * knot;
  };
  const turning = (speed: number) => (gravity * Math.tan(flight.bankDeg * radian)) / speed;
  let path = 0;
  let over = { north: 0, east: 0 };
  for (let i = 0; i < steps; i++) {
    const speed = speedAt((i + 0.5) * dt);
    const middle = heading + (turning(speedAt(i * dt)) * dt) / 2;
    const ground = {
      north: speed * Math.cos(middle) + wind.north,
      east: speed * Math.sin(middle) + wind.east,
    };
    const way = { north: sea.shipKt * knot * bow.north, east: sea.shipKt * knot * bow.east };
    plane = { north: plane.north + ground.north * dt, east: plane.east + ground.east * dt };
    ship = { north: ship.north + way.north * dt, east: ship.east + way.east * dt };
    over = { north: ground.north - way.north, east: ground.east - way.east };
    path += Math.hypot(over.north, over.east) * dt;
    heading += turning(speed) * dt;
  }
  const apart = { north: plane.north - ship.north, east: plane.east - ship.east };
  return {
    aheadFt: (apart.north * bow.north + apart.east * bow.east) / foot,
    rightFt: (apart.east * bow.north - apart.north * bow.east) / foot,
    courseDeg: heading / radian - sea.shipCourseDeg,
    pathFt: path / foot,
    trackDeg:
      Math.atan2(
        over.east * bow.north - over.north * bow.east,
        over.north * bow.north + over.east * bow.east,
      ) / radian,
  };
}
