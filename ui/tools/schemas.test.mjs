// The bindings from a small command table: shared types once, input and output kept apart where they differ.
import { expect, test } from 'vitest';
import { bindings, pascal } from './schemas.mjs';

const HAND = {
  oneOf: [
    { type: 'string', enum: ['left', 'right'] },
    { type: 'string', const: 'both' },
  ],
};
const ID = { type: 'string' };
const object = (properties, required = [], more = {}) => ({ type: 'object', properties, required, ...more });
const ref = (name) => ({ $ref: `#/$defs/${name}` });

const STUDENT = object({ id: ref('StudentId'), hand: ref('Hand'), town: { type: ['string', 'null'] } }, [
  'id',
  'hand',
]);
const table = () => [
  {
    name: 'students.list',
    about: 'All students.',
    writes: false,
    input: object({}, [], { title: 'Nothing', additionalProperties: false }),
    output: {
      title: 'Array_of_Student',
      type: 'array',
      items: ref('Student'),
      $defs: { Student: STUDENT, StudentId: ID, Hand: HAND },
    },
  },
  {
    name: 'students.add',
    about: 'Adds a student.',
    writes: true,
    input: object(
      {
        title: { type: 'string' },
        hand: { ...ref('Hand'), description: 'Which hand.' },
        days: {
          type: 'array',
          prefixItems: [{ type: 'string' }, { type: 'integer' }],
          minItems: 2,
          maxItems: 2,
        },
      },
      ['title'],
      { title: 'Add', $defs: { Hand: HAND } },
    ),
    output: { ...STUDENT, title: 'Student', $defs: { StudentId: ID, Hand: HAND } },
  },
];

test('a command table becomes types, each name once', async () => {
  expect(await bindings(table())).toMatchInlineSnapshot(`
    "// Generated from the command table by "npm run bindings". Never edited by hand.

    export type Hand = ('left' | 'right') | 'both';
    export type StudentId = string;
    export type StudentsListOutput = Student[];

    export interface Student {
      id: StudentId;
      hand: Hand;
      town?: string | null;
    }
    export interface StudentsAddInput {
      hand?: Hand;
      /**
       * @minItems 2
       * @maxItems 2
       */
      days?: [string, number];
      title: string;
    }
    export interface StudentsListInput {}

    /** Every command: what it takes and what it gives. */
    export interface Commands {
      /** Adds a student. */
      'students.add': { input: StudentsAddInput; output: Student };
      /** All students. */
      'students.list': { input: StudentsListInput; output: StudentsListOutput };
    }

    /** The names of all commands. */
    export const commandNames = ['students.add', 'students.list'] as const;
    "
  `);
});

test('the order of the table does not matter', async () => {
  expect(await bindings(table().reverse())).toBe(await bindings(table()));
});

test('an empty table has no commands', async () => {
  expect(await bindings([])).toContain('export const commandNames = [] as const;');
});

test('a type that reads otherwise as an input keeps a name for each, and so do the types that hold it', async () => {
  const inner = object({ zone: { type: 'string' } });
  const outer = object({ place: ref('Place') });
  const made = await bindings([
    {
      name: 'places.change',
      about: 'Changes a place.',
      input: { ...ref('Trip'), $defs: { Place: inner, Trip: outer } },
      output: { ...ref('Trip'), $defs: { Place: { ...inner, required: ['zone'] }, Trip: outer } },
    },
  ]);
  expect(made).toContain("'places.change': { input: TripInput; output: Trip };");
  expect(made).toMatch(/interface PlaceInput \{\s+zone\?: string/);
  expect(made).toMatch(/interface Place \{\s+zone: string/);
  expect(made).toMatch(/interface TripInput \{\s+place\?: PlaceInput/);
});

test('two types under one name are refused, and both commands named', async () => {
  const [list, add] = table();
  list.output.$defs.Hand = { type: 'string' };
  await expect(bindings([list, add])).rejects.toThrow(
    /"Hand" means two things .*students\.add and students\.list/,
  );
});

test('names of types', () => {
  expect(pascal('students.add')).toBe('StudentsAdd');
  expect(pascal('intake.record_incident')).toBe('IntakeRecordIncident');
});
