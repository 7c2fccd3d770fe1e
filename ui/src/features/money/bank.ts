// A bank statement as it is confirmed: what each row goes to, what is sent, what was wrong with which row.
import type { Input, Output } from '../../ipc';
import type { Problem } from '../../kit/problems';

export type Statement = Output<'bank.read'>;
export type BankRow = Statement['rows'][number];
export type Columns = NonNullable<Statement['columns']>;
export type RowToEnter = Input<'bank.enter'>['rows'][number];

/** What the coach says of a row. */
export interface Goes {
  tick: boolean;
  payer: string;
  /** In this order; none for those that are due first. */
  invoices: readonly string[];
  keep: boolean;
}

/** The columns that can be chosen, as they are asked for. */
export const parts: { part: ColumnPart; words: string; needed?: true }[] = [
  { part: 'day', words: 'Day', needed: true },
  { part: 'amount', words: 'Amount' },
  { part: 'money_in', words: 'What came in, if apart' },
  { part: 'money_out', words: 'What went out, if apart' },
  { part: 'side', words: 'In or out, if a column says so' },
  { part: 'currency', words: 'Currency' },
  { part: 'name', words: 'Who paid' },
  { part: 'words', words: 'What stood on it' },
  { part: 'reference', words: 'The bank’s own reference' },
];
export type ColumnPart = Exclude<keyof Columns, 'one_currency' | 'dates' | 'decimals'>;

/** The choice with another column for a part. What the cells told of the column before holds no more. */
export function withColumn(columns: Columns, part: ColumnPart, at: string): Columns {
  const next: Columns = { ...columns, [part]: at === '' ? null : Number(at) };
  if (part === 'day') next.dates = 'unknown';
  if (part === 'amount' || part === 'money_in' || part === 'money_out') next.decimals = 'unknown';
  return next;
}

/** A row as it is proposed: ticked when more than one thing speaks for it. */
export const asProposed = (row: BankRow): Goes => ({
  tick: row.proposal.sure,
  payer: row.proposal.payer ?? '',
  invoices: row.proposal.invoices,
  keep: row.proposal.keep,
});

/** What a row goes to, as one value of a list: an invoice, several, kept (`keep`), or what is due first (empty). */
export function forValue(goes: Goes): string {
  if (goes.keep) return 'keep';
  return goes.invoices.length > 1 ? 'several' : (goes.invoices[0] ?? '');
}

/** The same row going to what was chosen from the list; `several` are those that were proposed. */
export function goingTo(goes: Goes, value: string, proposed: readonly string[]): Goes {
  if (value === 'keep') return { ...goes, keep: true, invoices: [] };
  if (value === 'several') return { ...goes, keep: false, invoices: proposed };
  return { ...goes, keep: false, invoices: value ? [value] : [] };
}

/** From somebody else: what was named is of the one before. */
export const from = (goes: Goes, payer: string): Goes =>
  payer === goes.payer ? goes : { ...goes, payer, invoices: [], keep: false };

/** Where a row goes, in words. */
export function goesWords(
  goes: Goes,
  nameOf: (payer: string) => string,
  numberOf: (invoice: string) => string,
): string {
  if (!goes.payer) return 'Nobody yet';
  const name = nameOf(goes.payer);
  if (goes.keep) return `${name}, kept for later`;
  if (goes.invoices.length === 0) return `${name}, what is due first`;
  return `${name}, ${goes.invoices.map(numberOf).join(' and ')}`;
}

/** The rows that are ticked, as they are sent. */
export function toEnter(rows: readonly BankRow[], of: (row: BankRow) => Goes): RowToEnter[] {
  return rows
    .filter((row) => row.state === 'to_enter' && of(row).tick)
    .map((row) => {
      const { payer, invoices, keep } = of(row);
      return {
        reference: row.reference,
        day: row.day,
        currency: row.currency,
        amount: row.amount,
        words: row.words || row.name,
        payer: payer || null,
        invoices: [...invoices],
        keep,
      };
    });
}

/** What was wrong, by the reference of the row it is about. */
export function byReference(
  problems: readonly Problem[],
  sent: readonly RowToEnter[],
): Record<string, string> {
  const found: Record<string, string> = {};
  for (const { field, words } of problems) {
    const at = /^rows\[(\d+)\]/.exec(field)?.[1];
    const row = at === undefined ? undefined : sent[Number(at)];
    if (row) found[row.reference] = found[row.reference] ? `${found[row.reference]} ${words}` : words;
  }
  return found;
}
