// The load of a visit in figures a coach can read.
import type { Output } from '../../ipc';

/** The load of a visit. */
export type VisitLoad = Output<'reports.load'>;

/** "2.3", or a dash in words where there is no value. */
export const figure = (value: number | null, places = 0): string =>
  value === null ? 'no value' : value.toFixed(places);

/** The figures beside one another: what each is, and its value. */
export function figures(load: VisitLoad): { words: string; value: string; note: string }[] {
  const l = load.load;
  if (!l) {
    const any = load.sessions.some((s) => s.effort !== null);
    return any
      ? [{ words: 'Load', value: `${load.rated} and more`, note: 'some lessons are not rated yet' }]
      : [{ words: 'Load', value: 'not rated yet', note: 'ask how hard each lesson was' }];
  }
  return [
    { words: 'Load', value: figure(l.total), note: 'minutes × effort' },
    { words: 'A day', value: figure(l.mean), note: l.sd === null ? 'mean' : `mean; spread ${figure(l.sd)}` },
    { words: 'Monotony', value: figure(l.monotony, 2), note: 'mean ÷ spread' },
    { words: 'Strain', value: figure(l.strain), note: 'load × monotony' },
  ];
}
