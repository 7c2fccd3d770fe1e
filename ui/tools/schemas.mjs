// From the command table's JSON Schemas to TypeScript. Pure: the table in, the text of bindings.ts out.
import { compile } from 'json-schema-to-typescript';
import { format } from 'prettier';

const HEAD = '// Generated from the command table by "npm run bindings". Never edited by hand.\n';
const NOTES = new Set(['description', 'title', 'default', 'examples', 'deprecated', 'readOnly', 'writeOnly']);

const text = (x) =>
  JSON.stringify(x, (_, v) => (isRecord(v) ? Object.fromEntries(Object.entries(v).sort()) : v));
const isRecord = (x) => typeof x === 'object' && x !== null && !Array.isArray(x);

/** "students.add" gives "StudentsAdd". */
export const pascal = (name) =>
  name
    .split(/[^A-Za-z0-9]+/)
    .map((w) => w.charAt(0).toUpperCase() + w.slice(1))
    .join('');

/** Walks a schema, changing each schema object by `change`. */
function walk(x, change) {
  if (Array.isArray(x)) return x.map((y) => walk(y, change));
  if (!isRecord(x)) return x;
  return change(
    Object.fromEntries(
      Object.entries(x).map(([k, v]) => [k, k === 'const' || k === 'enum' ? v : walk(v, change)]),
    ),
  );
}

/** Takes from a schema what would only confuse the compiler: notes beside $ref, lengths, 2020-12 tuples. */
function plain(schema) {
  return walk(schema, (s) => {
    if (typeof s.$ref === 'string' && Object.keys(s).every((k) => k === '$ref' || NOTES.has(k)))
      return { $ref: s.$ref };
    const { title, minItems, maxItems, prefixItems, $schema, ...rest } = s;
    // "title" may also be the name of a property, and then it is a schema, not a note.
    const kept = isRecord(title) || title === true ? { ...rest, title } : rest;
    if (Array.isArray(prefixItems))
      return { ...kept, items: prefixItems, minItems: prefixItems.length, maxItems: prefixItems.length };
    return kept;
  });
}

/** The names of the definitions a schema refers to. */
function refs(schema) {
  const found = new Set();
  walk(schema, (s) => {
    if (typeof s.$ref === 'string' && s.$ref.startsWith('#/$defs/'))
      found.add(s.$ref.slice('#/$defs/'.length));
    return s;
  });
  return found;
}

/** All definitions of one side (inputs or outputs); two different ones under one name are refused. */
function definitions(commands, side) {
  const all = new Map();
  for (const command of commands) {
    for (const [name, def] of Object.entries(command[side].$defs ?? {})) {
      const clean = plain(def);
      const before = all.get(name);
      if (before && text(before.def) !== text(clean))
        throw new Error(
          `"${name}" means two things in the ${side}s of ${before.by} and ${command.name}: rename one type`,
        );
      all.set(name, before ?? { def: clean, by: command.name });
    }
  }
  return new Map([...all].map(([name, { def }]) => [name, def]));
}

/** Names that read otherwise as an input than as an output, in themselves or in what they refer to. */
function split(inputs, outputs) {
  const apart = new Set(
    [...inputs.keys()].filter((n) => outputs.has(n) && text(inputs.get(n)) !== text(outputs.get(n))),
  );
  for (let grown = true; grown;) {
    grown = false;
    for (const [name, def] of inputs) {
      if (apart.has(name) || !outputs.has(name) || ![...refs(def)].some((r) => apart.has(r))) continue;
      apart.add(name);
      grown = true;
    }
  }
  return apart;
}

/** The text of bindings.ts for a command table. */
export async function bindings(commands) {
  const sorted = [...commands].sort((a, b) => (a.name < b.name ? -1 : 1));
  const inputs = definitions(sorted, 'input');
  const outputs = definitions(sorted, 'output');
  const apart = split(inputs, outputs);
  const asInput = (schema) =>
    walk(schema, (s) => {
      const name = typeof s.$ref === 'string' ? s.$ref.slice('#/$defs/'.length) : undefined;
      return name && apart.has(name) ? { ...s, $ref: `#/$defs/${name}Input` } : s;
    });

  const defs = new Map(outputs);
  for (const [name, def] of inputs) defs.set(apart.has(name) ? `${name}Input` : name, asInput(def));

  /** A whole input or output: named by its type where that name means only this, else by its command. */
  const root = (command, side) => {
    const { $defs, ...schema } = command[side];
    const clean = side === 'input' ? asInput(plain(schema)) : plain(schema);
    if (typeof clean.$ref === 'string' && Object.keys(clean).length === 1)
      return clean.$ref.slice('#/$defs/'.length);
    const title = schema.title;
    if (
      side === 'output' &&
      typeof title === 'string' &&
      defs.has(title) &&
      text(defs.get(title)) === text(clean)
    )
      return title;
    const name = pascal(command.name) + pascal(side);
    if (defs.has(name))
      throw new Error(`a type is called ${name}, as the ${side} of ${command.name} would be: rename it`);
    defs.set(name, clean);
    return name;
  };
  const rows = sorted.map((c) => ({
    name: c.name,
    about: c.about,
    input: root(c, 'input'),
    output: root(c, 'output'),
  }));

  const names = [...defs.keys()].sort();
  for (const name of names)
    if (!/^[A-Z][A-Za-z0-9]*$/.test(name)) throw new Error(`"${name}" is no name for a type: rename it`);
  const types =
    names.length === 0
      ? ''
      : await compile(
          {
            $defs: Object.fromEntries(names.map((n) => [n, defs.get(n)])),
            type: 'object',
            additionalProperties: false,
          },
          'Everything',
          {
            additionalProperties: false,
            bannerComment: '',
            format: false,
            unknownAny: true,
            unreachableDefinitions: true,
          },
        );
  const body = dropRoot(types);
  const made = [...body.matchAll(/^export (?:interface|type) (\w+)/gm)].map((m) => m[1]).sort();
  if (text(made) !== text(names)) {
    const odd = made.filter((n) => !names.includes(n)).concat(names.filter((n) => !made.includes(n)));
    throw new Error(`the schemas and the types made from them differ: ${odd.join(', ')}`);
  }
  const table = rows
    .map(
      (r) =>
        `/** ${String(r.about ?? '').replaceAll('*/', '* /')} */\n'${r.name}': { input: ${r.input}; output: ${r.output} };`,
    )
    .join('\n');
  const list = rows.map((r) => `'${r.name}',`).join('\n');
  return format(
    `${HEAD}\n${body}\n/** Every command: what it takes and what it gives. */\nexport interface Commands {\n${table}\n}\n\n` +
      `/** The names of all commands. */\nexport const commandNames = [\n${list}\n] as const;\n`,
    { parser: 'typescript', singleQuote: true, printWidth: 110 },
  );
}

/** Takes out the empty type that only carried the definitions, and what the compiler says about itself. */
function dropRoot(types) {
  return types
    .replace(/export interface Everything \{\s*\}\n?/, '')
    .replace(
      /^ \* This interface was referenced by `Everything`'s JSON-Schema\n \* via the `definition` "[^"]*"\.\n/gm,
      '',
    )
    .replace(/\/\*\*\n \*\/\n/g, '');
}
