import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { isPrivate, lanAddress } from '../../src/phone/address.ts';
import { scanCode } from '../../src/phone/scan.ts';

const v4 = (address: string, internal = false) => ({ address, family: 'IPv4' as const, internal });

describe('the address on the local network', () => {
  // The edges of the three private ranges, RFC 1918 section 3.
  test.each([
    ['9.255.255.255', false],
    ['10.0.0.0', true],
    ['10.255.255.255', true],
    ['11.0.0.0', false],
    ['172.15.255.255', false],
    ['172.16.0.0', true],
    ['172.31.255.255', true],
    ['172.32.0.0', false],
    ['192.167.255.255', false],
    ['192.168.0.0', true],
    ['192.168.255.255', true],
    ['192.169.0.0', false],
    ['0.0.0.0', false],
  ])('%s is private: %s', (address, expected) => {
    expect(isPrivate(address)).toBe(expected);
  });

  test('is a real card’s before a virtual one’s, and never a public one or the loopback', () => {
    const docker = [v4('172.17.0.1')];
    const card = [{ address: 'fe80::1', family: 'IPv6' as const, internal: false }, v4('192.168.1.20')];
    expect(lanAddress({ lo: [v4('127.0.0.1', true)], docker0: docker, eth0: card })).toBe('192.168.1.20');
    expect(lanAddress({ docker0: docker })).toBe('172.17.0.1');
    expect(lanAddress({ lo: [v4('127.0.0.1', true)], eth0: [v4('8.8.8.8')], gone: undefined })).toBeUndefined();
  });
});

describe('the code to scan', () => {
  const url = 'webcal://192.168.1.20:4631/c/AAAAAAAAAAAAAAAAAAAAAA/shop.ics';

  /** What a camera sees of a terminal with light letters on a dark ground: a block is light. */
  function photographed(code: string) {
    const lines = code.split('\n');
    const scale = 4;
    const width = lines[0]!.length * scale;
    const height = lines.length * 2 * scale;
    const pixels = new Uint8ClampedArray(width * height * 4);
    for (let y = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1) {
        const block = lines[Math.floor(y / scale / 2)]![Math.floor(x / scale)]!;
        const light = block === '█' || block === (Math.floor(y / scale) % 2 === 0 ? '▀' : '▄');
        pixels.fill(light ? 255 : 0, (y * width + x) * 4, (y * width + x) * 4 + 3);
        pixels[(y * width + x) * 4 + 3] = 255;
      }
    return jsQR.default(pixels, width, height, { inversionAttempts: 'dontInvert' })?.data;
  }

  test('is read by a decoder as the very address, dark on light', () => {
    expect(photographed(scanCode(url, { columns: 80, colour: false, plain: false }))).toBe(url);
  });

  test('forces light on dark where colours may be set, and is left out where it would be torn', () => {
    const coloured = scanCode(url, { columns: 80, colour: true, plain: false }).split('\n');
    expect(coloured.every((line) => /^\u001b\[97;40m[█▀▄ ]+\u001b\[0m$/.test(line))).toBe(true);
    expect(scanCode(url, { columns: 30, colour: false, plain: false })).toBe('');
    expect(scanCode(url, { columns: undefined, colour: false, plain: false })).toBe('');
    expect(scanCode(url, { columns: 80, colour: false, plain: true })).toBe('');
  });
});
