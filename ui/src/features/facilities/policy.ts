// A facility's own policy in words.
import type { Output } from '../../ipc';
import { longDay } from '../../kit/dates';
import type { Said } from './rules';

/** What is written down of it, in the order in which it is asked for. */
export function policyWords(policy: Output<'intake.policy'>): Said[] {
  if (!policy) return [];
  const seen = policy.seen ? `read on ${longDay(policy.seen)}` : '';
  const lines: [string, string][] = [
    ['policy', [policy.name, policy.link, seen].filter(Boolean).join(' · ')],
    [
      'form',
      policy.form_needed ? ['each player signs its own', policy.form_where].filter(Boolean).join(' · ') : '',
    ],
    [
      'minors',
      [
        policy.observable ? 'on courts that can be seen into' : '',
        policy.adult_present ? 'another adult has to be there' : '',
        policy.youngest === null || policy.youngest === undefined ? '' : `nobody under ${policy.youngest}`,
      ]
        .filter(Boolean)
        .join(' · '),
    ],
    ['also', policy.rules ?? ''],
  ];
  return lines.flatMap(([about, words]) => (words ? [{ about, words }] : []));
}
