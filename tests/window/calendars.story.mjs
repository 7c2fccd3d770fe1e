// The coach's calendars in the real window, over a real network to a real server on loopback: a lesson goes out, the
// telephone moves it, the coach decides; the plug is pulled, and the password is asked for again.
import assert from 'node:assert/strict';
import { makeFile } from '../world/bridge.mjs';
import { account, startRadicale } from '../world/radicale.mjs';
import { until } from './harness.mjs';
import { story } from './story.mjs';

story(
  'lessons go to a calendar on a server, and come back only as the coach says',
  async ({ folder, start }) => {
    const server = await startRadicale();
    try {
      const file = await makeFile(folder, async (act) => {
        const { id: facility } = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
        const student = await act('students.add', { name: 'Marta Lindqvist' });
        const days = { first_day: '2099-03-10', last_day: '2099-03-12' };
        const visit = await act('visits.plan', { student: student.id, facility, ...days });
        const when = { day: '2099-03-10', starts: '09:00', minutes: 60 };
        await act('lessons.plan', { visits: [visit.id], facility, ...when });
      });
      const window = await start('--file', file);
      await window.execute('(to) => { location.hash = to; }', '#/coach/calendars');
      await window.read('None was chosen.');
      await window.act('Choose a server');
      await window.type("//input[@name='address']", server.address);
      await window.type("//input[@name='user']", account.user);
      await window.type("//input[@name='password']", account.password);
      await window.act('Find calendars');
      await window.read('These say when you are taken');
      await window.picture('calendars-1-found');
      await window.act('Use these');
      await window.read('1 lesson written.');
      const calendar = await server.called('Lessons');
      const [path] = await server.paths(calendar);
      const text = await server.ask('GET', path);
      assert.match(text, /SUMMARY:Lesson: Marta Lindqvist/);

      const moved = text.replaceAll('T090000', 'T140000').replaceAll('T100000', 'T150000');
      await server.ask('PUT', path, moved, { 'content-type': 'text/calendar' });
      await window.act('Bring in step now');
      await window.read('To decide');
      await window.read('14:00 to 15:00');
      await window.picture('calendars-2-to-decide');

      // The plug is pulled; what is to be decided is still there, and the password is asked for again.
      await window.pullThePlug();
      const again = await start('--file', file);
      await again.execute('(to) => { location.hash = to; }', '#/coach/calendars');
      await again.read('To decide');
      await again.read('The password is needed.');
      await again.click("//button[starts-with(normalize-space(), 'Write it there as it is here')]");
      await again.type("//input[@name='password']", account.password);
      await again.act('Sign in');
      await until('the lesson is back at nine on the server', async () =>
        (await server.ask('GET', path)).includes('T090000'),
      );
      await again.read('1 lesson written.');
      await again.picture('calendars-3-put-back');
      await again.close();
    } finally {
      await server.stop();
    }
  },
);
