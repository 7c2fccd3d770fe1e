// Base64 against the examples of its standard.
import { expect, it } from 'vitest';
import { toBase64 } from './base64';

it('is written as RFC 4648 says', () => {
  // Section 10 of the RFC.
  const of = (text: string) => toBase64(new TextEncoder().encode(text));
  expect(['', 'f', 'fo', 'foo', 'foob', 'fooba', 'foobar'].map(of)).toEqual([
    '',
    'Zg==',
    'Zm8=',
    'Zm9v',
    'Zm9vYg==',
    'Zm9vYmE=',
    'Zm9vYmFy',
  ]);
});

it('takes more bytes than a call takes arguments', () => {
  const bytes = new Uint8Array(200_000).map((_, n) => n % 251);
  expect(Uint8Array.from(atob(toBase64(bytes)), (c) => c.charCodeAt(0))).toEqual(bytes);
});
