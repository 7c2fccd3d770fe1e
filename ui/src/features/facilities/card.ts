// A facility's card in words.
import type { Output } from '../../ipc';
import { longDay, readDate } from '../../kit/dates';
import type { Said } from './rules';

/** What is written on the card, in the order in which it is asked for. */
export function cardWords(card: Output<'facilities.card'>): Said[] {
  const lines: [string, string | undefined][] = [
    ['desk', [card.desk, card.desk_phone, card.desk_email].filter(Boolean).join(', ')],
    ['entrance', card.entrance],
    ['telephone', card.phone],
    ['defibrillator', card.defibrillator],
    ['first aid', card.first_aid],
    ['hospital', card.hospital],
    ['looked', card.seen && readDate(card.seen) ? `on ${longDay(card.seen)}` : card.seen],
  ];
  return lines.flatMap(([about, words]) => (words ? [{ about, words }] : []));
}
