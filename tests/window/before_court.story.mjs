// Before court, in the real window: a minor from the first message to ready for court, with guardian and facility
// form, each step showing what still blocks; then a blow to the head, a lesson refused, and a recorded clearance.
import assert from 'node:assert/strict';
import { makeFile } from '../world/bridge.mjs';
import { check } from '../world/cli.mjs';
import { day } from '../world/returning.mjs';
import { Key, until } from './harness.mjs';
import { story } from './story.mjs';

story(
  'a minor from the first message to the court, and after a blow to the head',
  async ({ folder, start }) => {
    let hall;
    const file = await makeFile(folder, async (run) => {
      await run('settings.change', { name: 'Robin Hale', closing: 'See you on court,' });
      hall = await run('facilities.add', { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Dublin' });
      await run('facilities.add_court', { facility: hall.id, name: 'Court 1', seen: 'no' });
      await run('facilities.add_court', { facility: hall.id, name: 'Court 2', seen: 'yes' });
      await run('facilities.set_teaching', {
        facility: hall.id,
        teaching: { state: 'granted', by_whom: 'Nuala' },
      });
      const card = {
        phone: '112',
        desk_phone: '+353 1 555 0111',
        defibrillator: 'by the desk',
        entrance: '1 Quay Street',
      };
      await run('facilities.set_card', { facility: hall.id, card });
      const policy = { name: 'House rules', form_needed: true, form_where: 'at the desk', observable: true };
      await run('intake.set_policy', { facility: hall.id, policy });
      const draft = await run('intake.draft_notice', { facility: hall.id });
      await run('intake.publish_notice', { title: draft.title, facility: hall.id, parts: draft.parts });
    });
    const window = await start('--file', file);
    const button = (words) =>
      window.click(`//*[self::button or self::a][starts-with(normalize-space(), ${JSON.stringify(words)})]`);
    const input = (name, text) => window.type(`//*[self::input or self::textarea][@name='${name}']`, text);
    const choose = (legend, option) =>
      window.click(
        `//fieldset[legend[starts-with(normalize-space(), ${JSON.stringify(legend)})]]//label[normalize-space()=${JSON.stringify(option)}]`,
      );
    const gone = (words) =>
      until(`“${words}” to be gone`, async () => !(await window.words()).includes(words));

    // The first message: who, from where, how they heard.
    await window.press(Key.Alt, '2');
    await window.act('Add a student');
    await input('name', 'Ilse Ruys');
    await input('home', 'Delfport');
    await input('heard', 'A team mate');
    await window.act('Add the student');
    await window.read('Not ready for court');
    await window.read('heard of you: A team mate');
    await window.read('The birth date is not known');
    await window.picture('before-1-enquiry');

    // Who she is: a minor, so a guardian is asked for.
    await window.act('Before court');
    await window.read('Nobody to call in an emergency');
    await window.act('Who it is');
    await input('born', '2013-02-28');
    await window.act('Add a guardian');
    await input('guardian.name', 'Mies Ruys');
    await input('guardian.relation', 'mother');
    await input('guardian.phone', '+31 15 555 0170');
    await window.act('Save');
    await window.read('a minor');
    await window.act('Before court');
    await window.read('No guardian has consented to lessons yet');
    await gone('The birth date is not known');

    // What is asked, together on the screen.
    await window.act('Go through it');
    await input('emergency.name', 'Mies Ruys');
    await input('emergency.phone', '+31 15 555 0170');
    await input('eyewear', 'Guard junior');
    await input('eyewear_standard', 'ASTM F3164');
    await input('injuries_asked', day(0));
    await window.act('Keep it');
    await gone('Nobody to call in an emergency');
    await gone('No eyewear for racket sports');
    await window.act('Ask the three questions');
    await choose('Planned exercise', 'yes');
    await choose('A known disease', 'no');
    await choose('Any sign', 'no');
    await window.act('Write the answers down');
    await gone('The readiness questions have not been asked');
    await window.read('These answers ask for no physician first');

    // A minor does not consent alone; a guardian does, one question at a time.
    const ask = async (of) => {
      await button(`Ask: ${of}`);
      await window.click(
        `//dialog[@open]//fieldset[legend[starts-with(normalize-space(), 'May') or contains(., 'may')]]//label[normalize-space()='yes']`,
      );
    };
    await ask('lessons of a minor');
    await choose('Who answers', 'the student');
    await input('by.name', 'Mies Ruys');
    await window.act('Write the answer down');
    await window.read('A minor does not consent alone: a guardian does.');
    await choose('Who answers', 'a parent or guardian');
    await window.act('Write the answer down');
    await gone('No guardian has consented to lessons yet');
    await ask('emergency treatment');
    await input('by.name', 'Mies Ruys');
    await window.act('Write the answer down');
    await gone('Emergency treatment was not asked about');
    await ask('keeping health answers');
    await input('by.name', 'Mies Ruys');
    await window.act('Write the answer down');
    await gone('Nobody has consented to health answers being kept');
    await window.picture('before-2-asked');

    // The notice is read and acknowledged by the guardian; the facility's own form is signed on paper.
    await window.read('to read');
    await button('Read and acknowledge');
    await window.read('The facility comes first');
    await window.picture('before-3-notice');
    await input('by.name', 'Mies Ruys');
    await window.act('Acknowledge');
    await window.read('Acknowledged by Mies Ruys (mother)');
    await window.act('Note a signed form');
    await input('kept', 'at the desk, blue folder');
    await window.act('Note it');
    await window.read('blue folder');
    await window.read('Nothing is missing.');

    // A visit, and a lesson on a court that nobody can see into: not ready. On the other court: ready.
    await window.press(Key.Alt, '2');
    await window.act('Ilse Ruys');
    await window.read('Ready for court');
    await window.act('Plan a visit');
    await input('first_day', day(0));
    await input('last_day', day(1));
    await window.act('Plan the visit');
    await button('Start the visit');
    await window.read('here now');
    await window.act('Set a goal');
    await window.type("//dialog[@open]//input[@name='title']", 'Drive serve');
    await window.act('Set the goal');
    await window.read('set here');
    const lesson = async (act, court) => {
      await window.act(act);
      await window.type("//dialog[@open]//select[@name='court']", court);
      await window.execute(`() => document.querySelector("dialog[open] input[name='starts']").select()`);
      await input('starts', '23:00');
      await window.execute(`() => document.querySelector("dialog[open] input[name='minutes']").select()`);
      await input('minutes', '30');
    };
    await lesson('Plan a lesson', 'Court 1');
    await button('Plan the lesson');
    await window.read('Court 1');
    await window.press(Key.Alt, '1');
    await window.read('Ilse Ruys is not ready for court.');
    await window.read('Court 1 cannot be seen into');
    await window.picture('before-4-day-sheet');
    await button('Record');
    await window.read('Not ready for court');
    await window.act('Back to the visit');
    await button('Move');
    await window.type("//dialog[@open]//select[@name='court']", 'Court 2');
    await button('Move the lesson');
    await gone('Court 1');
    await button('Record');
    await window.read('Enter a total');
    await window.press('1');
    await until('a touch', async () => (await window.words()).includes('made'));
    await window.picture('before-5-court');

    // A blow to the head: the number and the card first, then what happened; from then on nobody plays.
    await window.act('Incident');
    await window.read('Help comes first.');
    await window.read('by the desk');
    await window.picture('before-6-incident');
    await input(
      'happened',
      'Yesterday, playing for herself, the ball came off the back wall and hit her above the ear.',
    );
    await window.click("//input[@name='day']");
    await window.press(Key.Control, 'a');
    await window.press(Key.Backspace);
    await input('day', day(-1));
    await choose('A blow to the head', 'not known');
    await window.act('Write it down');
    await window.read('does not play until a health-care professional’s clearance is recorded');
    await window.act('Change');
    await input('witnesses', 'Piet Maas, next court');
    await input('told', 'Her mother, by telephone at once');
    await button('Write it down');
    await window.read('Piet Maas');
    await window.act('Sign');
    await input('signature', 'Robin Hale');
    await window.click("//dialog[@open]//form//button[normalize-space()='Sign']");
    await window.read('signed by Robin Hale');
    await window.picture('before-7-signed');

    // The lesson is refused: on the day sheet, on court, and there is no way to go on.
    await window.press(Key.Alt, '1');
    await window.read('Ilse Ruys does not play.');
    await button('Record');
    await window.read('No play');
    assert.ok(!(await window.words()).includes('Go on all the same'), 'no reason opens the court');
    assert.ok(!(await window.words()).includes('Enter a total'), 'nothing can be recorded');
    await window.picture('before-8-refused');

    // A named professional’s clearance is recorded, and the court opens again.
    await window.act('Before court');
    await window.read('No play');
    await button('Record a clearance');
    await button('Record the clearance');
    await window.read('The name of who wrote it is empty.');
    await input('by_whom', 'Dr. Wim Zandt');
    await input('profession', 'physician');
    await input('says', 'No signs. May play again from today, lightly at first.');
    await button('Record the clearance');
    await window.read('what somebody says of it is none');
    await input('seen', 'The letter, which her mother brought and keeps');
    await button('Record the clearance');
    await window.read('Dr. Wim Zandt');
    await gone('No play until');
    await window.picture('before-9-cleared');
    await window.press(Key.Alt, '1');
    await button('Record');
    await window.read('Enter a total');
    await window.pullThePlug();
    assert.ok(check(file).sound, 'the file is sound');
  },
);
