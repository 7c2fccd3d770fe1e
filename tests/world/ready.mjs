// Everything in place before court, so that a story about something else is not held up by it.

/** Answers all that is asked of a student of age, and notes that the coach may teach at the facilities. */
export async function readyForCourt(act, student, { born = '1980-05-04' } = {}) {
  const { profile } = await act('students.show', { student });
  await act('students.change', { student, profile: { ...profile, born: profile.born || born } });
  await act('intake.set', {
    student,
    record: { eyewear: 'Guard 2', eyewear_standard: 'ASTM F3164', injuries_asked: '2026-01-01' },
    emergency: { name: 'Someone Near', phone: '+353 1 555 0100' },
  });
  const answers = { active: 'yes', disease: 'no', symptoms: 'no' };
  await act('intake.answer_readiness', { student, answers, answered: profile.name });
  for (const kind of ['health_data', 'emergency_treatment'])
    await act('intake.give_consent', { student, kind, given: true, by: { name: profile.name } });
  for (const facility of await act('facilities.list', {}))
    await act('facilities.set_teaching', { facility: facility.id, teaching: { state: 'granted' } });
}
