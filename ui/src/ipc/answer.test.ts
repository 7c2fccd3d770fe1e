// What comes back from the core, good and bad, and the two ways there.
import { expect, test } from 'vitest';
import { CallError, readAnswer, readError } from './answer';
import { bridge, shell, transportOf } from './transport';
import { codeWords } from './words';

const refused = {
  code: 'refused',
  words: 'A name is needed.',
  problems: [{ field: 'name', code: 'missing', words: 'A name is needed.' }],
};

test('an answer carries its value and what changed', () => {
  expect(readAnswer({ value: { id: 'a' }, changes: [{ kind: 'student', id: 'a' }] })).toEqual({
    value: { id: 'a' },
    changes: [{ kind: 'student', id: 'a' }],
    act: null,
  });
  expect(readAnswer({ value: null, changes: [], act: 'x' })).toEqual({ value: null, changes: [], act: 'x' });
});

test('an error is read bare and under "error", with its words', () => {
  for (const raw of [refused, { error: refused }]) {
    const error = readError(raw);
    expect(error).toBeInstanceOf(CallError);
    expect(error).toMatchObject(refused);
    expect(error.title).toBe(codeWords.refused.title);
    expect(error.way_out).toBe(codeWords.refused.way_out);
  }
  expect(() => readAnswer({ error: refused })).toThrow(CallError);
});

test('what cannot be read is a fault, never an empty answer', () => {
  const unreadable = [
    {},
    [],
    'command call not found',
    { value: 1 },
    { code: 'new_code', words: 'x' },
    null,
    new Error('x'),
  ];
  for (const raw of unreadable) {
    expect(readError(raw).code, JSON.stringify(raw)).toBe('fault');
    expect(() => readAnswer(raw)).toThrow(CallError);
  }
});

test('a fault keeps the details under which the log has it', () => {
  expect(readError({ code: 'fault', words: 'w', problems: [], details: 'r-7' }).details).toBe('r-7');
});

test('the bridge is sent the name, the input and the token of the run', async () => {
  const sent: [unknown, RequestInit | undefined][] = [];
  const send: typeof fetch = (to, init) => {
    sent.push([to, init]);
    return Promise.resolve(new Response('{"value":1,"changes":[]}'));
  };
  const raw = await bridge('t-1', send)('students.list', { named: 'A' });
  expect(raw).toEqual({ value: 1, changes: [] });
  expect(sent).toEqual([
    [
      '/call',
      {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-carryover-token': 't-1' },
        body: '{"name":"students.list","input":{"named":"A"}}',
      },
    ],
  ]);
});

test('an answer of the bridge that is not JSON is an error with its status', async () => {
  const send: typeof fetch = () => Promise.resolve(new Response('forbidden', { status: 403 }));
  await expect(bridge('t-1', send)('x', {})).rejects.toThrow('status 403, forbidden');
});

test('the page decides the way: by its meta tag the bridge, without it the shell', () => {
  const page = (token: string | null) => ({
    querySelector: () => (token === null ? null : ({ getAttribute: () => token } as unknown as Element)),
  });
  expect(transportOf(page(null) as unknown as Document)).toBe(shell);
  expect(transportOf(page('t-1') as unknown as Document)).not.toBe(shell);
});
