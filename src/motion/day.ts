/** The quantities of the day, as a pass needs them. */
export { dayOf } from '../day/day-of.ts';
