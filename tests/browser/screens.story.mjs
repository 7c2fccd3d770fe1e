// Every screen on the sample season: nothing inaccessible, in light and in dark, no fault, no breach of
// the content policy.
import { expect, noFindings, test } from './story.mjs';

test('no screen has a finding, light or dark', async ({ page, bridge, open }) => {
  test.setTimeout(180_000);
  await bridge.act('desk.sample');
  const people = await bridge.act('students.list');
  const marta = people.find((p) => p.name === 'Marta Lindqvist');
  const ines = people.find((p) => p.name === 'Ines Okafor');
  const planned = (await bridge.act('visits.list', { student: ines.id })).find((v) => v.stage === 'planned');
  await bridge.act('visits.open', { visit: planned.id });
  const [goal] = await bridge.act('goals.list', { student: marta.id });
  const [lesson] = await bridge.act('lessons.list', { visit: planned.id });
  const letters = await bridge.act('letters.list');
  const owed = letters.find((l) => l.state === 'owed');
  const issued = letters.find((l) => l.state === 'issued');
  const [place] = await bridge.act('facilities.list');
  await open();
  for (const [address, heading] of [
    ['#/', /November|December|January|February|March|April|May|June|July|August|September|October/],
    ['#/people', 'People'],
    ['#/people/new', 'Add a student'],
    [`#/people/${marta.id}`, 'Marta Lindqvist'],
    [`#/people/${marta.id}/edit`, 'Change a student'],
    [`#/goals/${goal.goal.id}`, goal.goal.title],
    [`#/visits/${planned.id}`, 'Ines Okafor'],
    [`#/visits/${planned.id}/home`, 'At home'],
    ['#/season', 'Season'],
    [`#/court/${planned.id}`, 'Ines Okafor'],
    [`#/people/${marta.id}/levels`, 'Levels'],
    [`#/people/${marta.id}/record`, 'Copy or erase'],
    [`#/lessons/${lesson.id}`, 'Lesson'],
    [`#/lessons/${lesson.id}/card`, 'Type a card in'],
    [`#/history/student/${marta.id}`, 'What changed'],
    ['#/places', 'Places'],
    [`#/places/${place.id}`, place.place.name],
    [`#/places/${place.id}/rules`, `Rules of booking at ${place.place.name}`],
    ['#/letters', 'Letters'],
    [`#/letters/${owed.visit}`, `Letter for ${owed.name}`],
    [`#/issued/${issued.letter}`, `Letter for ${issued.name}`],
    ['#/import', 'Bring in a spreadsheet'],
    ['#/coach', 'Coach'],
    ['#/week', /^Week of /],
    [`#/trip/${planned.days.first}/${planned.days.last}`, /^Trip of /],
    ['#/year', /^Year /],
    [`#/year/${planned.days.first.slice(0, 4)}/all/all/held`, 'Visits held'],
  ]) {
    await page.evaluate((to) => (location.hash = to), address);
    await expect(page.getByRole('heading', { level: 1, name: heading })).toBeVisible();
    await noFindings(page);
  }
});
