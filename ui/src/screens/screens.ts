// The list of screens. A screen is added by one line here; those with a nav entry stand in the head, in this order.
import type { Component } from 'svelte';
import type { Route } from '../kit/route';
import Coach from './Coach.svelte';
import DaySheet from './DaySheet.svelte';
import Letters from './Letters.svelte';
import People from './People.svelte';
import Places from './Places.svelte';

/** What a screen is given: the parts of the address that its path names. Most need none. */
export interface ScreenProps {
  params: Record<string, string>;
}

/** A screen: its address and what draws it. */
export interface Screen extends Route {
  /** The words of its entry in the head, for the screens that have one. */
  nav?: string;
  component: Component<ScreenProps> | Component<Record<string, never>>;
}

/** All screens, more exact addresses before those with a named part. */
export const screens: readonly Screen[] = [
  { path: '/', nav: 'Day sheet', component: DaySheet },
  { path: '/people', nav: 'People', component: People },
  { path: '/places', nav: 'Places', component: Places },
  { path: '/letters', nav: 'Letters', component: Letters },
  { path: '/coach', nav: 'Coach', component: Coach },
];
