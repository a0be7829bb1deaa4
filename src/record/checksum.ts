/** CRC-32 as in ISO-HDLC, zip and PNG: tells damage, not malice. */

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let remainder = byte;
  for (let bit = 0; bit < 8; bit++)
    remainder = remainder & 1 ? (remainder >>> 1) ^ 0xedb88320 : remainder >>> 1;
  return remainder;
});

const encoder = new TextEncoder();

/** Checksum of the text's UTF-8 bytes, 0 to 2³² − 1. */
export function crc32(text: string): number {
  let remainder = 0xffffffff;
  for (const byte of encoder.encode(text)) remainder = (remainder >>> 8) ^ table[(remainder ^ byte) & 0xff]!;
  return (remainder ^ 0xffffffff) >>> 0;
}

/** The checksum in 8 characters. */
export const crcWord = (text: string): string => crc32(text).toString(16).padStart(8, '0');
