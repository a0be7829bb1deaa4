/** Instants in the pilot's own words and time zone. */

const day = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long' });
const stamp = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});

/** "Tuesday 3 March". */
export const sayWhen = (ms: number): string => day.format(ms);

/** "3 Mar, 19:40". */
export const sayMoment = (ms: number): string => stamp.format(ms);
