/** How a training record's file names itself. Apart from the rest, so that a file can be told for one at once. */
export const backupFormat = 'gatecall-record';
