// An incident report as a form has it: every field a string or a choice.
import type { Input } from '../../ipc';

type Report = Input<'intake.record_incident'>['report'];
type Answer = 'yes' | 'no' | 'not_known';

/** What the form holds. */
export type ReportForm = {
  [
    K in Exclude<keyof Report, 'called' | 'head' | 'unconscious' | 'memory' | 'seizure' | 'earlier'>
  ]-?: string;
} & {
  called: Answer;
  head: Answer | '';
  unconscious: Answer | '';
  memory: Answer | '';
  seizure: Answer | '';
  earlier: Answer | '';
};

/** A form filled from a report, or an empty one. */
export function toForm(report: Report = {}): ReportForm {
  return {
    student: report.student ?? '',
    lesson: report.lesson ?? '',
    facility: report.facility ?? '',
    person: report.person ?? '',
    role: report.role ?? '',
    age: report.age ?? '',
    guardian: report.guardian ?? '',
    day: report.day ?? '',
    time: report.time ?? '',
    place: report.place ?? '',
    number: report.number ?? '',
    activity: report.activity ?? '',
    happened: report.happened ?? '',
    body_part: report.body_part ?? '',
    mechanism: report.mechanism ?? '',
    equipment: report.equipment ?? '',
    first_aid: report.first_aid ?? '',
    called_at: report.called_at ?? '',
    head_cause: report.head_cause ?? '',
    witnesses: report.witnesses ?? '',
    told: report.told ?? '',
    follow_up: report.follow_up ?? '',
    author: report.author ?? '',
    called: report.called ?? 'not_known',
    head: report.head ?? '',
    unconscious: report.unconscious ?? '',
    memory: report.memory ?? '',
    seizure: report.seizure ?? '',
    earlier: report.earlier ?? '',
  };
}

/** The report to send. What is asked after a blow to the head goes only with one. */
export function toReport(form: ReportForm): Report {
  const head = form.head === 'yes' || form.head === 'not_known';
  const asked = (answer: Answer | '') => (head && answer ? answer : null);
  return {
    ...form,
    head: form.head || null,
    student: form.student || null,
    lesson: form.lesson || null,
    facility: form.facility || null,
    called_at: form.called === 'yes' ? form.called_at : '',
    head_cause: head ? form.head_cause : '',
    unconscious: asked(form.unconscious),
    memory: asked(form.memory),
    seizure: asked(form.seizure),
    earlier: asked(form.earlier),
  };
}
