// Addresses inside the window.
import { expect, test } from 'vitest';
import { find, href, isUnder, pathOf } from './route';

const routes = [{ path: '/' }, { path: '/people' }, { path: '/people/add' }, { path: '/people/:id' }];

test('the address finds its screen and its parts', () => {
  expect(find(routes, '')?.route.path).toBe('/');
  expect(find(routes, '#/')?.route.path).toBe('/');
  expect(find(routes, '#/people')?.route.path).toBe('/people');
  expect(find(routes, '#/people/')?.route.path).toBe('/people');
  expect(find(routes, '#/people/add')?.route.path).toBe('/people/add');
  expect(find(routes, '#/people/a%2Fb')).toEqual({ route: { path: '/people/:id' }, params: { id: 'a/b' } });
});

test('an unknown or broken address finds nothing', () => {
  expect(find(routes, '#/elsewhere')).toBeNull();
  expect(find(routes, '#/people/1/2')).toBeNull();
  expect(find(routes, '#/people/%E0%A4%A')).toBeNull();
});

test('a link is what is found again', () => {
  const link = href('/people/:id', { id: 'ä/7' });
  expect(find(routes, link)?.params).toEqual({ id: 'ä/7' });
  expect(href('/people')).toBe('#/people');
  expect(() => href('/people/:id')).toThrow(RangeError);
});

test('a nav entry is here for its own address and those under it', () => {
  expect(isUnder('#/people/7', '/people')).toBe(true);
  expect(isUnder('#/peoples', '/people')).toBe(false);
  expect(isUnder('#/people', '/')).toBe(false);
  expect(isUnder('', '/')).toBe(true);
  expect(pathOf('#nonsense')).toBe('/');
});
