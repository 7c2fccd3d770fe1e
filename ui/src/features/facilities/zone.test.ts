// Time zones as they are typed.
import { expect, test } from 'vitest';
import { readZone } from './zone';

const ZONES = ['America/Knox', 'America/New_York', 'America/Indiana/Knox', 'Europe/Lisbon'];

test.each([
  ['Europe/Lisbon', 'Europe/Lisbon'],
  [' europe/lisbon ', 'Europe/Lisbon'],
  ['lisbon', 'Europe/Lisbon'],
  ['New York', 'America/New_York'],
  ['Knox', 'Knox'],
  ['Lisb', 'Lisb'],
  ['', ''],
])('“%s” is %s', (typed, zone) => {
  expect(readZone(typed, ZONES)).toBe(zone);
});
