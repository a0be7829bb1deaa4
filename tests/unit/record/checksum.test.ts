import { describe, expect, it } from 'vitest';
import { crc32, crcWord } from '../../../src/record/checksum.ts';

describe('the checksum', () => {
  it.each([
    // Check value of CRC-32/ISO-HDLC in the Catalogue of parametrised CRC algorithms (G. Cook).
    ['123456789', 0xcbf43926],
    ['', 0],
    // From the PNG specification (ISO/IEC 15948): an IEND chunk ends in AE 42 60 82.
    ['IEND', 0xae426082],
  ])('of “%s” is the published one', (text, sum) => {
    expect(crc32(text)).toBe(sum);
  });

  it('counts UTF-8 bytes, and notices one changed bit', () => {
    expect(crc32('60°')).toBe(crc32('60\u00b0'));
    expect(crcWord('60°')).not.toBe(crcWord('60±'));
    expect(crcWord('')).toBe('00000000');
  });
});
