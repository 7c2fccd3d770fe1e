// Shortcuts: what a key is called, who wins, and that typing is left alone.
import { expect, test } from 'vitest';
import { isTyping, keyName, Keys } from './keys';

const pressed = (key: string, more = {}) => ({ key, ctrlKey: false, metaKey: false, altKey: false, ...more });
const input = { tagName: 'INPUT', type: 'text' };

test('names of keys', () => {
  expect(keyName(pressed('n'))).toBe('n');
  expect(keyName(pressed('N'))).toBe('n');
  expect(keyName(pressed('?'))).toBe('?');
  expect(keyName(pressed('Enter', { ctrlKey: true }))).toBe('Ctrl+Enter');
  expect(keyName(pressed('Enter', { metaKey: true }))).toBe('Ctrl+Enter');
  expect(keyName(pressed('1', { altKey: true }))).toBe('Alt+1');
});

test('where characters are typed', () => {
  expect(isTyping(input)).toBe(true);
  expect(isTyping({ tagName: 'INPUT', type: 'radio' })).toBe(false);
  expect(isTyping({ tagName: 'TEXTAREA' })).toBe(true);
  expect(isTyping({ tagName: 'SPAN', isContentEditable: true })).toBe(true);
  expect(isTyping({ tagName: 'BUTTON' })).toBe(false);
  expect(isTyping(null)).toBe(false);
});

test('the latest shortcut of a key wins and gives it back', () => {
  const keys = new Keys();
  const did: string[] = [];
  keys.add({ key: 'n', words: 'New', act: () => did.push('screen') });
  const leave = keys.add({ key: 'n', words: 'Next', act: () => did.push('dialog') });
  keys.press(pressed('n'), null);
  expect(keys.list().map((s) => s.words)).toEqual(['Next']);
  leave();
  keys.press(pressed('n'), null);
  expect(did).toEqual(['dialog', 'screen']);
});

test('a lone character and its own undo are left to a field, another chord is not', () => {
  const keys = new Keys();
  const did: string[] = [];
  keys.add(
    { key: 'n', words: 'New', act: () => did.push('n') },
    { key: 'Ctrl+Enter', words: 'Save', act: () => did.push('save') },
    { key: 'Ctrl+z', words: 'Undo', act: () => did.push('undo') },
  );
  expect(keys.press(pressed('n'), input)).toBe(false);
  expect(keys.press(pressed('z', { ctrlKey: true }), input)).toBe(false);
  expect(keys.press(pressed('Enter', { ctrlKey: true }), input)).toBe(true);
  expect(keys.press(pressed('x'), null)).toBe(false);
  expect(keys.press(pressed('z', { ctrlKey: true }), null)).toBe(true);
  expect(did).toEqual(['save', 'undo']);
});

test('lone characters can be switched off, all but the one that shows the keys', () => {
  const keys = new Keys();
  let ran = 0;
  const act = () => {
    ran += 1;
  };
  keys.add(
    { key: 'n', words: 'New', act },
    { key: '?', words: 'Keys', act },
    { key: 'Ctrl+k', words: 'Find', act },
  );
  keys.singles = false;
  expect(keys.list().map((s) => s.key)).toEqual(['?', 'Ctrl+k']);
  expect(keys.press(pressed('n'), null)).toBe(false);
  expect(ran).toBe(0);
});
