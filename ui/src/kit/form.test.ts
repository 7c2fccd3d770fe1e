// A form keeps what was typed, says all that is wrong, and is sent once.
import { expect, test } from 'vitest';
import { FormState } from './form.svelte';

const refusal = (...fields: string[]) => ({
  code: 'refused',
  title: 'Not accepted',
  words: 'Some answers need another look.',
  way_out: 'Correct them and try again.',
  problems: fields.map((field) => ({ field, code: 'missing', words: `${field} is needed.` })),
});

test('a refusal keeps what was typed and names every field', async () => {
  const form = new FormState({ name: 'Ana', town: '' });
  form.place('name');
  form.place('town');
  const answer = await form.submit(() => Promise.reject(refusal('zone', 'town', 'name') as unknown as Error));
  expect(answer).toBeNull();
  expect(form.values).toEqual({ name: 'Ana', town: '' });
  expect(form.problems.map((p) => p.field)).toEqual(['name', 'town', 'zone']);
  expect(form.problem('town')).toBe('town is needed.');
  expect(form.busy).toBe(false);
  expect(form.trouble).toBeNull();
});

test('an answer clears the problems of the time before', async () => {
  const form = new FormState({ name: '' });
  await form.submit(() => Promise.reject(refusal('name') as unknown as Error));
  form.values.name = 'Ana';
  expect(await form.submit((v) => Promise.resolve(v.name))).toBe('Ana');
  expect(form.problems).toEqual([]);
});

test('what concerns no field is told apart from what does', async () => {
  const form = new FormState({ name: 'Ana' });
  await form.submit(() => Promise.reject(new Error('lost the line')));
  expect(form.problems).toEqual([]);
  expect(form.trouble).toMatchObject({ code: 'fault', words: 'lost the line' });
});

test('a second submit while the first is on its way does nothing', async () => {
  const form = new FormState({ name: 'Ana' });
  let runs = 0;
  let finish = () => {};
  const first = form.submit(() => {
    runs += 1;
    return new Promise<string>((done) => {
      finish = () => done('sent');
    });
  });
  expect(form.busy).toBe(true);
  const second = await form.submit(() => {
    runs += 1;
    return Promise.resolve('again');
  });
  finish();
  expect(await first).toBe('sent');
  expect(second).toBeNull();
  expect(runs).toBe(1);
});

test('a field that left the form is no longer linked to', () => {
  const form = new FormState({});
  const leave = form.place('name');
  expect(form.has('name')).toBe(true);
  form.place('name');
  leave();
  expect(form.has('name'), 'another field of that name came before this one went').toBe(true);
  const once = new FormState({});
  once.place('name')();
  expect(once.has('name')).toBe(false);
  expect(new FormState({}).idOf('name')).not.toBe(form.idOf('name'));
});
