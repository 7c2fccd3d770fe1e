// Generated from the command table by "npm run bindings". Never edited by hand.

/**
 * Who speaks: the student, or the guardian of a minor.
 *
 */
export type Speaks = 'self' | 'guardian';
/**
 * On what something was accepted.
 *
 */
export type OnWhat = 'screen' | 'paper';
export type EntryId = string;
/**
 * a date as YYYY-MM-DD
 *
 */
export type Day = string;
/**
 * What an entry is of.
 *
 */
export type EntryKind =
  | 'invoice'
  | 'credit_note'
  | 'payment'
  | 'applied'
  | 'paid_back'
  | 'write_off'
  | 'lesson'
  | 'late'
  | 'lapsed'
  | 'bonus'
  | 'moved'
  | 'reversal';
export type InvoiceId = string;
export type LessonId = string;
export type StudentId = string;
export type AccountsChangedOutput = SettledOtherwise[];
/**
 * What kind of document.
 *
 */
export type DocumentKind = 'invoice' | 'credit_note';
export type PayerId = string;
/**
 * Where an invoice stands.
 *
 */
export type InvoiceState = 'draft' | 'open' | 'part_paid' | 'settled' | 'overdue';
export type PackageId = string;
/**
 * What is paid back of a package with lessons left.
 *
 */
export type PaidBackAs = 'in_part' | 'at_single';
/**
 * Why a lesson did not take place, or not to its end.
 *
 */
export type EndedBy = 'student' | 'coach' | 'place';
/**
 * Where a lesson is in its life.
 *
 */
export type LessonState = 'planned' | 'given' | 'cut_short' | 'called_off' | 'missed';
/**
 * How a lesson is settled.
 *
 */
export type SettledBy = 'package' | 'invoice' | 'free';
export type AccountsToSettleOutput = ToSettle[];
/**
 * Where money is, or whose.
 *
 */
export type LedgerAccount =
  | 'bank'
  | 'cash'
  | 'card'
  | 'cheque'
  | 'receivable'
  | 'credit'
  | 'to_pay_back'
  | 'deferred'
  | 'earned'
  | 'lapsed'
  | 'tax_due'
  | 'rounding'
  | 'written_off';
/**
 * What a line of an invoice is for.
 *
 */
export type What = 'lesson' | 'late' | 'court' | 'package' | 'analysis' | 'travel' | 'other';
/**
 * What a cost was for.
 *
 */
export type CostKind =
  'drive' | 'fare' | 'lodging' | 'meals' | 'day_rate' | 'court' | 'equipment' | 'dues' | 'other';
export type AcknowledgementId = string;
export type NoticeId = string;
export type VersionId = string;
export type ScanId = string;
export type ActId = string;
export type Instant = string;
export type RowId = string;
/**
 * How often something comes again.
 *
 */
export type Again = 'never' | 'every_week' | 'every_second_week' | 'every_month' | 'every_month_by_weekday';
/**
 * What an amount before a booking is counted in.
 *
 */
export type AheadUnit = 'hours' | 'days' | 'months';
/**
 * A question that may be left open.
 *
 */
export type Answer = 'yes' | 'no' | 'not_known';
export type VisitId = string;
export type FacilityId = string;
/**
 * What a plan is wished to be, once no more lessons fit in.
 *
 */
export type Wish = 'spread' | 'cost' | 'times';
export type CourtId = string;
/**
 * a time as HH:MM
 *
 */
export type Time = string;
/**
 * Something taken to be otherwise than it is.
 *
 */
export type WhatIf =
  | {
      kind: 'arrive_earlier';
      visit: VisitId;
      /**
       * By so many minutes.
       */
      minutes: number;
    }
  | {
      kind: 'leave_later';
      visit: VisitId;
      /**
       * By so many minutes.
       */
      minutes: number;
    }
  | {
      kind: 'day_before';
      visit: VisitId;
    }
  | {
      kind: 'day_after';
      visit: VisitId;
    }
  | {
      kind: 'one_more_a_day';
      visit: VisitId;
    }
  | {
      kind: 'earlier_hours';
      visit: VisitId;
      /**
       * By so many minutes.
       */
      minutes: number;
    }
  | {
      kind: 'later_hours';
      visit: VisitId;
      /**
       * By so many minutes.
       */
      minutes: number;
    }
  | {
      kind: 'begin_earlier';
      day: Day;
      /**
       * By so many minutes.
       */
      minutes: number;
    }
  | {
      kind: 'go_on_later';
      day: Day;
      /**
       * By so many minutes.
       */
      minutes: number;
    }
  | {
      kind: 'longer_days';
      /**
       * So many.
       */
      minutes: number;
    }
  | {
      kind: 'longer_weeks';
      /**
       * So many.
       */
      minutes: number;
    }
  | {
      kind: 'without';
      day: Day;
      /**
       * What.
       */
      what: string;
    }
  | {
      kind: 'also_at';
      facility: FacilityId;
    };
export type AssessmentId = string;
/**
 * What a level rests on.
 *
 */
export type Basis = 'evidence' | 'opinion';
export type AssessmentsGiveNormsOutput = Norms | null;
export type AssessmentsListOutput = Assessment[];
export type AssessmentsNormsOutput = TestNorms[];
export type TestId = string;
export type AssessmentsTestsOutput = TestTaken[];
/**
 * The order of day and month in dates such as 03/04/2026. Dates written year first, or with the
 * month's name, are read whatever the order.
 *
 */
export type DateOrder = 'unknown' | 'day_month_year' | 'month_day_year';
/**
 * What stands before the decimals of an amount.
 *
 */
export type BankDecimals = 'unknown' | 'point' | 'comma';
/**
 * What kind of file it is.
 *
 */
export type BankFileKind = 'csv' | 'camt';
/**
 * Where a row stands.
 *
 */
export type BankRowState = 'to_enter' | 'entered' | 'out' | 'reversal';
export type BlockId = string;
export type GoalId = string;
/**
 * What a block is for.
 *
 */
export type Kind = 'retest' | 'practice' | 'end_test' | 'look_back';
/**
 * Under what a goal is practised, from the easiest to the hardest.
 *
 */
export type Condition = 'fed' | 'live' | 'set_game' | 'match';
/**
 * How a count came to be known.
 *
 */
export type Source = 'counted_live' | 'total_entered' | 'game_chances' | 'told';
export type BookingId = string;
/**
 * Where a court booking is.
 *
 */
export type BookingState = 'asked' | 'confirmed' | 'refused' | 'released';
export type BookingsAskOutput = Booking[];
/**
 * What is to be done about a court.
 *
 */
export type CourtState = 'to_give_back' | 'to_ask' | 'asked' | 'confirmed';
export type BookingsListOutput = CourtNeeded[];
export type BusyId = string;
export type CalendarId = string;
/**
 * What a calendar is for.
 *
 */
export type CalendarRole = 'busy' | 'lessons';
export type CalendarCalendarsOutput = OwnCalendar[];
/**
 * Why an invitation is due.
 *
 */
export type InvitationKind = 'new' | 'changed' | 'called_off';
export type CalendarDueOutput = InvitationDue[];
/**
 * Which of the two hours, when the clocks go back and an hour comes twice.
 *
 */
export type WhichHour = 'once' | 'first' | 'second';
/**
 * A category of tax, by its code in UNTDID 5305 as EN 16931 uses it.
 *
 */
export type Category = 'S' | 'Z' | 'E' | 'AE' | 'K' | 'G' | 'O' | 'L' | 'M';
export type CertificateId = string;
/**
 * What kind of paper.
 *
 */
export type CertificateKind =
  'first_aid' | 'background_check' | 'safeguarding' | 'insurance' | 'instructor' | 'other';
/**
 * What a change between two counts may be called.
 *
 */
export type ChangeWord = 'up' | 'leaning up' | 'too few to tell' | 'leaning down' | 'down';
/**
 * What the coach decided about a goal.
 *
 */
export type Choice = 'carry_on' | 'raise' | 'close' | 'set_aside' | 'take_up';
/**
 * Who or what cannot be in two places.
 *
 */
export type Who = 'coach' | 'student' | 'court';
export type ClearanceId = string;
export type InjuryId = string;
/**
 * What a column can be.
 *
 */
export type Role =
  | 'student'
  | 'email'
  | 'arrive'
  | 'depart'
  | 'place'
  | 'goal'
  | 'cue'
  | 'condition'
  | 'criterion'
  | 'kind'
  | 'result'
  | 'tries'
  | 'note';
export type ConsentId = string;
/**
 * What is consented to.
 *
 */
export type ConsentKind =
  | 'lessons'
  | 'health_data'
  | 'recording'
  | 'publishing'
  | 'photographs'
  | 'messages'
  | 'emergency_treatment'
  | 'transport';
export type CostId = string;
/**
 * What a rate is for one of.
 *
 */
export type Per = 'mile' | 'km' | 'day';
export type InvoiceLineId = string;
export type RateId = string;
/**
 * How a cost is split.
 *
 */
export type CostSplitBy = 'equal' | 'lessons';
export type CostsAddRateOutput = CostRate[];
export type CostsPublishedOutput = PublishedRates[];
export type CostsPutRateAwayOutput = CostRate[];
export type CostsRatesOutput = CostRate[];
export type CostsTakePublishedOutput = CostRate[];
/**
 * How the hours before a booking are counted where the clocks change in between.
 *
 */
export type CountedBy = 'elapsed' | 'wall';
/**
 * What a figure counts.
 *
 */
export type CountedWhat = 'held' | 'agreed' | 'expected' | 'given' | 'to_come' | 'missed';
/**
 * The one thing that counts as a yes.
 *
 */
export type Counts = 'cue' | 'result' | 'choice';
/**
 * Whether a court can be seen into from outside, as lessons with minors may need it.
 *
 */
export type Seen = 'yes' | 'no';
/**
 * The kinds of criterion.
 *
 */
export type CriterionKind = 'of' | 'rate' | 'at_most';
/**
 * What kind of block a row is.
 *
 */
export type CsvKind = 'retest' | 'end test' | 'practice';
/**
 * What the dates say about their order.
 *
 */
export type DateEvidence = 'not_needed' | 'day_month_year' | 'month_day_year' | 'mixed' | 'undecidable';
export type DecisionId = string;
/**
 * Where a talk with the server is.
 *
 */
export type TalkStage = 'silent' | 'talking' | 'done' | 'failed';
export type DeskChooseOutput = FileName | null;
export type LetterId = string;
/**
 * A paper about money.
 *
 */
export type DeskOpenMoneyPaperInput =
  | {
      kind: 'invoice';
      invoice: InvoiceId;
    }
  | {
      kind: 'invoice_file';
      invoice: InvoiceId;
      syntax: InvoiceSyntax;
    }
  | {
      kind: 'reminder';
      reminder: ReminderId;
    }
  | {
      kind: 'receipt';
      entry: EntryId;
    }
  | {
      kind: 'statement';
      payer: PayerId;
      /**
       * Since which day, as YYYY-MM-DD; empty for everything.
       */
      since?: string;
    }
  | {
      kind: 'year';
      /**
       * Its number.
       */
      year: number;
    }
  | {
      kind: 'year_table';
      /**
       * Its number.
       */
      year: number;
    };
/**
 * The syntaxes of EN 16931.
 *
 */
export type InvoiceSyntax = 'ubl' | 'cii';
export type ReminderId = string;
/**
 * A paper about someone before court, or about what happened there.
 *
 */
export type DeskOpenSheetInput =
  | {
      kind: 'notice';
      version: VersionId;
    }
  | {
      kind: 'acknowledgement';
      acknowledgement: AcknowledgementId;
    }
  | {
      kind: 'incident';
      incident: IncidentId;
    }
  | {
      kind: 'scan';
      scan: ScanId;
    }
  | {
      kind: 'questions';
      /**
       * The student; left out for someone who is not in the file yet.
       */
      student?: StudentId | null;
    };
export type IncidentId = string;
export type DeskReadCalendarOutput = OwnCalendar | null;
export type MessageId = string;
/**
 * A paper about money.
 *
 */
export type DeskSaveMoneyPaperInput =
  | {
      kind: 'invoice';
      invoice: InvoiceId;
    }
  | {
      kind: 'invoice_file';
      invoice: InvoiceId;
      syntax: InvoiceSyntax;
    }
  | {
      kind: 'reminder';
      reminder: ReminderId;
    }
  | {
      kind: 'receipt';
      entry: EntryId;
    }
  | {
      kind: 'statement';
      payer: PayerId;
      /**
       * Since which day, as YYYY-MM-DD; empty for everything.
       */
      since?: string;
    }
  | {
      kind: 'year';
      /**
       * Its number.
       */
      year: number;
    }
  | {
      kind: 'year_table';
      /**
       * Its number.
       */
      year: number;
    };
/**
 * A paper about someone before court, or about what happened there.
 *
 */
export type DeskSaveSheetInput =
  | {
      kind: 'notice';
      version: VersionId;
    }
  | {
      kind: 'acknowledgement';
      acknowledgement: AcknowledgementId;
    }
  | {
      kind: 'incident';
      incident: IncidentId;
    }
  | {
      kind: 'scan';
      scan: ScanId;
    }
  | {
      kind: 'questions';
      /**
       * The student; left out for someone who is not in the file yet.
       */
      student?: StudentId | null;
    };
/**
 * How far handing over is.
 *
 */
export type SendingStage = 'resting' | 'sending' | 'pausing' | 'failed';
/**
 * What happens when both sides have three points in a game.
 *
 */
export type Deuce = 'advantage' | 'deciding_point' | 'star_point';
/**
 * A kind of thing that is kept for a span.
 *
 */
export type Kept = 'enquiry' | 'health' | 'report' | 'person' | 'accounts';
/**
 * How the connection is encrypted. Without encryption nothing is sent.
 *
 */
export type Encryption = 'tls' | 'start_tls';
export type KeptId = string;
/**
 * What came of an offer.
 *
 */
export type OfferState = 'offered' | 'agreed' | 'declined';
export type ErasingKeptForAccountsOutput = KeptForAccounts[];
export type FacilitiesListOutput = Facility[];
/**
 * What a court costs that is given back too late.
 *
 */
export type Later = 'full' | 'fee' | 'nothing';
/**
 * Where the question stands.
 *
 */
export type Permission = 'not_asked' | 'asked' | 'granted' | 'refused';
export type FacilitiesZonesOutput = string[];
export type FormId = string;
export type FactId = string;
/**
 * What a fact about a student is about.
 *
 */
export type FactKind = 'equipment' | 'level' | 'history';
/**
 * What is proposed to be written.
 *
 */
export type FollowUpKind = 'before_visit' | 'questions' | 'letter' | 'overdue' | 'home_report' | 'come_again';
/**
 * Plain or strong type.
 *
 */
export type Weight = 'plain' | 'strong';
/**
 * What kind of thing was found.
 *
 */
export type FoundKind = 'student' | 'facility' | 'goal';
/**
 * Where a goal stands.
 *
 */
export type State = 'working' | 'met' | 'kept' | 'slipped' | 'raised' | 'closed' | 'set_aside';
/**
 * How a goal came to be at a visit.
 *
 */
export type How = 'set' | 'carried';
export type GoalsAcceptOutput = Proposal[];
export type JottingId = string;
export type GoalsJotOutput = Jotting[];
export type GoalsJottingsOutput = Jotting[];
export type GoalsListOutput = Listed[];
export type GoalsLookBackOutput = Shown | null;
export type GoalsOnCourtOutput = OnCourt[];
export type GoalsProposalsOutput = Proposal[];
export type GoalsRankOutput = Listed[];
export type GoalsReasonsOutput = string[];
/**
 * The hand the racket is held in.
 *
 */
export type Hand = 'right' | 'left';
export type HomeLastOutput = HomePlan | null;
export type HomePlanId = string;
export type HomeLineId = string;
/**
 * What an amount counts.
 *
 */
export type HomeUnit = 'tries' | 'minutes';
/**
 * What kind of thing it is.
 *
 */
export type InjuryKind = 'injury' | 'restriction' | 'head';
/**
 * The inks of a sheet, by the name they have on the screen.
 *
 */
export type Ink = 'ink' | 'soft' | 'rule' | 'line' | 'ball' | 'maple';
export type IntakeAcknowledgementsOutput = Acknowledgement[];
export type ReadinessId = string;
/**
 * What the table says.
 *
 */
export type Outcome =
  | 'ask'
  | 'not_necessary_light'
  | 'clearance_first'
  | 'not_necessary_continue'
  | 'clearance_for_vigorous'
  | 'stop_and_ask';
/**
 * A language in which a student is written to.
 *
 */
export type Language = 'en' | 'de';
/**
 * What a part of a notice says; a notice has each of them once.
 *
 */
export type NoticeItem =
  | 'facility'
  | 'law'
  | 'advice'
  | 'emergency'
  | 'risks'
  | 'eyewear'
  | 'data'
  | 'guardian'
  | 'pictures'
  | 'version';
export type IntakeCertificatesOutput = Certificate[];
export type IntakeClearancesOutput = Clearance[];
export type IntakeConsentsOutput = ConsentAsked[];
export type IntakeEyewearOutput = EyewearStandard[];
export type IntakeFormsOutput = FacilityForm[];
/**
 * Whether a student may go on court, as far as what is written down says.
 *
 */
export type ReadyState = 'ready' | 'not_ready' | 'blocked';
/**
 * What is missing, or to be careful of.
 *
 */
export type ReadyAbout =
  | 'head'
  | 'birth_date'
  | 'guardian'
  | 'emergency_contact'
  | 'injuries'
  | 'readiness'
  | 'consent'
  | 'notice'
  | 'facility_form'
  | 'facility_rules'
  | 'eyewear'
  | 'teaching'
  | 'own_papers';
export type IntakeGuestConsentsOutput = GuestConsent[];
export type IntakeIncidentsOutput = Incident[];
export type IntakeInjuriesOutput = Injury[];
export type IntakeNoticesNeededOutput = NoticeNeeded[];
export type IntakeNoticesOutput = Notice[];
export type IntakePolicyOutput = Policy | null;
export type IntakeReadinessOutput = Readiness[];
export type IntakeReadyAtOutput = Ready[];
export type IntakeReadyOutput = Ready[];
/**
 * Where something is set that a draft lacks.
 *
 */
export type LackIn = 'seller' | 'payer' | 'lines' | 'taxes';
/**
 * Whether prices are without or with tax.
 *
 */
export type Prices = 'net' | 'gross';
export type InvoicesInPartsOutput = DocPart[];
export type JobId = string;
export type JournalNewestOutput = Act[];
export type KeepingDueOutput = Due[];
/**
 * What a line on the day sheet leads to.
 *
 */
export type Leads =
  | 'start_visit'
  | 'record'
  | 'visit'
  | 'letter'
  | 'letters'
  | 'student'
  | 'courts'
  | 'calendars'
  | 'before_court'
  | 'incidents'
  | 'papers'
  | 'kept';
export type LessonsClashesOutput = Clash[];
export type TemplateId = string;
export type LessonsKeepTemplateOutput = Template[];
export type LessonsListOutput = Lesson[];
export type LessonsTemplatesOutput = Template[];
/**
 * Where a letter is in its life.
 *
 */
export type LetterState = 'owed' | 'draft' | 'issued';
/**
 * A part of a letter, in the order a letter has them.
 *
 */
export type PartKey =
  | 'opening'
  | 'strength'
  | 'worked'
  | 'noticed'
  | 'moved'
  | 'kept'
  | 'levels'
  | 'carried'
  | 'home'
  | 'next'
  | 'closing';
/**
 * The standard structure types of ISO 32000-1 §14.8.4 that a sheet uses.
 *
 */
export type SheetTag =
  'h1' | 'h2' | 'p' | 'figure' | 'table' | 'tr' | 'th' | 'td' | 'l' | 'li' | 'lbl' | 'l-body';
/**
 * One thing drawn. An item without an element is ornament: rules, page numbers, repeated heads.
 *
 */
export type PageItem =
  | {
      kind: 'text';
      /**
       * Place in [`Pages::elements`].
       */
      element: number | null;
      /**
       * Left end.
       */
      x: number;
      /**
       * Baseline.
       */
      y: number;
      /**
       * Drawn width, a space at the end of a line not counted.
       */
      width: number;
      /**
       * Size of type.
       */
      size: number;
      /**
       * Place in [`Pages::fonts`].
       */
      font: number;
      ink: Ink;
      /**
       * The words, composed (NFC).
       */
      words: string;
    }
  | {
      kind: 'line';
      /**
       * Place in [`Pages::elements`].
       */
      element: number | null;
      /**
       * The points in order.
       */
      points: [number, number][];
      /**
       * Thickness.
       */
      width: number;
      ink: Ink;
      /**
       * Lengths of stroke and gap.
       *
       * @minItems 2
       * @maxItems 2
       */
      dash: [number, number] | null;
    }
  | {
      kind: 'circle';
      /**
       * Place in [`Pages::elements`].
       */
      element: number | null;
      /**
       * Its centre.
       *
       * @minItems 2
       * @maxItems 2
       */
      centre: [number, number];
      /**
       * Its radius.
       */
      radius: number;
      /**
       * The ink inside.
       */
      fill: Ink | null;
      /**
       * The line around it.
       */
      stroke: Stroke | null;
    }
  | {
      kind: 'rect';
      /**
       * Place in [`Pages::elements`].
       */
      element: number | null;
      /**
       * Left edge.
       */
      x: number;
      /**
       * Top edge.
       */
      y: number;
      /**
       * Width.
       */
      width: number;
      /**
       * Height.
       */
      height: number;
      /**
       * The ink inside.
       */
      fill: Ink | null;
      /**
       * The line around it.
       */
      stroke: Stroke | null;
    };
/**
 * A part of a sheet.
 *
 */
export type SheetPlace =
  | {
      part: 'letterhead';
    }
  | {
      part: 'piece';
      number: number;
    }
  | {
      part: 'footer';
    };
export type LettersListOutput = LetterLine[];
/**
 * What the result of a test counts.
 *
 */
export type Measure = 'points' | 'hits' | 'seconds';
/**
 * What a message is about.
 *
 */
export type MessageKind =
  | 'letter'
  | 'invoice'
  | 'reminder'
  | 'invitation'
  | 'offer'
  | 'home_plan'
  | 'before_visit'
  | 'questions'
  | 'home_report'
  | 'come_again'
  | 'words'
  | 'trial';
/**
 * What became of a message.
 *
 */
export type MessageState =
  'to_read' | 'waiting' | 'going' | 'accepted' | 'again' | 'stopped' | 'unsure' | 'withdrawn' | 'told';
/**
 * What messages are about.
 *
 */
export type MessageOf =
  | {
      kind: 'letter';
      letter: LetterId;
    }
  | {
      kind: 'invoice';
      invoice: InvoiceId;
    }
  | {
      kind: 'reminder';
      reminder: ReminderId;
    }
  | {
      kind: 'invitations';
      visit: VisitId;
    }
  | {
      kind: 'offer';
      visit: VisitId;
      /**
       * Its words.
       */
      words: string;
    }
  | {
      kind: 'home_plan';
      visit: VisitId;
    }
  | {
      kind: 'before_visit';
      visit: VisitId;
    }
  | {
      kind: 'questions';
      student: StudentId;
    }
  | {
      kind: 'home_report';
      visit: VisitId;
    }
  | {
      kind: 'come_again';
      visit: VisitId;
    }
  | {
      kind: 'words';
      student: StudentId;
    }
  | {
      kind: 'trial';
    };
export type MessagePartId = string;
export type MessageStepId = string;
/**
 * Who serves first in the next game.
 *
 */
export type NextServer = 'other' | 'winner' | 'given';
/**
 * Why a day of a trip has no hours to sell.
 *
 */
export type NothingFree = 'passed' | 'nowhere' | 'off' | 'limit' | 'taken';
export type ObservationId = string;
/**
 * Strength or fault.
 *
 */
export type ObservationKind = 'strength' | 'fault';
export type ObservationsListOutput = Observation[];
export type OfferId = string;
export type OuttraySetTextOutput = MessageText[];
/**
 * How a message was told in another way.
 *
 */
export type ToldHow = 'phone' | 'person' | 'short_text' | 'paper' | 'file' | 'arrived';
export type OuttrayTextsOutput = MessageText[];
export type OwnTimeListOutput = BusyShown[];
/**
 * The unit a pack's lengths are written in, so that a metric court and one in feet are both exact.
 *
 */
export type Unit = 'inch' | 'mm';
/**
 * The surfaces a court can have.
 *
 */
export type SurfaceId = 'front' | 'left' | 'right' | 'back' | 'ceiling' | 'floor';
/**
 * What a piece of wall is made of.
 *
 */
export type PackPanelKind = 'wall' | 'mesh';
/**
 * An edge of a line.
 *
 */
export type PackEdge = 'front' | 'back' | 'inner' | 'outer' | 'middle' | 'lower' | 'upper';
/**
 * Who can score.
 *
 */
export type Scoring = 'server' | 'rally';
export type PackagesListOutput = Package[];
export type PackagesWouldGiveBackOutput = string;
/**
 * How money was paid.
 *
 */
export type PaidBy = 'transfer' | 'cash' | 'card' | 'cheque';
export type PayersListOutput = Payer[];
/**
 * Where a plan's making is.
 *
 */
export type PlanStage = 'planning' | 'trying' | 'done' | 'stopped' | 'failed';
export type PlanningTakeOutput = Lesson[];
/**
 * What the student mostly plays.
 *
 */
export type Plays = 'singles' | 'doubles' | 'both';
export type PriceId = string;
/**
 * What a price is for.
 *
 */
export type PricedAs = 'lesson' | 'package' | 'analysis' | 'travel' | 'other';
export type TaxRuleId = string;
export type PricesDropTaxOutput = TaxRule[];
export type PricesListOutput = Price[];
export type PricesSetTaxOutput = TaxRule[];
export type PricesTaxesOutput = TaxRule[];
export type ReportsFindOutput = Found[];
/**
 * What has a history of its own.
 *
 */
export type Thing = 'student' | 'goal' | 'visit' | 'facility';
/**
 * Where the length of the shortest lesson is from.
 *
 */
export type ShortestFrom = 'rates' | 'lessons' | 'usual';
export type SportsAddDrillOutput = DrillLine[];
export type SportsAddSkillOutput = SkillLine[];
export type SportsDrillsOutput = DrillLine[];
export type SportsListOutput = Pack[];
export type SportsSkillsOutput = SkillLine[];
/**
 * Where a visit is in its life.
 *
 */
export type Stage = 'expected' | 'planned' | 'open' | 'closed' | 'called_off';
export type StudentsAddFactOutput = Fact[];
export type StudentsChangeFactOutput = Fact[];
export type StudentsFactsOutput = Fact[];
export type StudentsListOutput = StudentLine[];
export type StudentsRemoveFactOutput = Fact[];
/**
 * What a row of a trip is for.
 *
 */
export type TripRowFor = 'lesson' | 'late' | 'court' | 'travel' | 'cost';
/**
 * How sure a row of a trip is.
 *
 */
export type TripRowFrom = 'entered' | 'draft' | 'to_settle' | 'planned' | 'expected';
export type TripsNoteCourtsOutput = Cost[];
export type TripsOthersOutput = TripCompared[];
export type VisitsListOutput = Visit[];

/**
 * Who accepted something, when, and on what; part of an acknowledgement and of a consent.
 *
 */
export interface Accepting {
  /**
   * The full name, as typed by the person or as signed on paper.
   */
  name?: string;
  relation?: Speaks;
  /**
   * What the guardian is to the student: mother, father.
   */
  as_what?: string;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  how?: OnWhat;
  /**
   * The signed paper.
   */
  scan?: ScanGiven | null;
}
/**
 * A scan that is handed in.
 *
 */
export interface ScanGiven {
  /**
   * The file's name.
   */
  name: string;
  /**
   * Its bytes in base64 (RFC 4648).
   */
  base64: string;
}
/**
 * A line of an account: what was charged, or paid.
 *
 */
export interface AccountLine {
  entry: EntryId;
  day: Day;
  kind: EntryKind;
  /**
   * In words.
   */
  words: string;
  /**
   * The invoice, if it is of one.
   */
  invoice: InvoiceId | null;
  /**
   * The currency.
   */
  currency: string;
  /**
   * What the payer owes more by it, a decimal; below 0 less.
   */
  amount: string;
  /**
   * What the payer owes after it, a decimal; below 0 what is owed to them.
   */
  balance: string;
  /**
   * Whether it was taken back.
   */
  taken_back: boolean;
}
/**
 * What stands on an account in one currency, as decimals.
 *
 */
export interface AccountStands {
  /**
   * The currency.
   */
  currency: string;
  /**
   * What is open on invoices.
   */
  open: string;
  /**
   * What is kept for later.
   */
  kept: string;
  /**
   * What is to be paid back.
   */
  to_pay_back: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface AccountsBalancedInput {}
/**
 * Whether all that was entered balances.
 *
 */
export interface AccountsBalancedOutput {
  /**
   * How many entries there are.
   */
  entries: number;
  /**
   * Entries that do not balance: none, ever.
   */
  wrong: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface AccountsChangedInput {}
/**
 * A lesson that changed after it was settled.
 *
 */
export interface SettledOtherwise {
  lesson: LessonId;
  student: StudentId;
  /**
   * The name.
   */
  name: string;
  day: Day;
  /**
   * What changed, in a sentence.
   */
  words: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface AccountsOverviewInput {}
/**
 * Where the money stands.
 *
 */
export interface AccountsOverviewOutput {
  /**
   * By currency.
   */
  stands: Stands[];
  /**
   * Lessons that are over and not settled.
   */
  to_settle: number;
  /**
   * Lessons that are otherwise now than when they were settled.
   */
  changed: number;
  /**
   * Drafts.
   */
  drafts: InvoiceListed[];
  /**
   * Invoices of which something is open, the longest due first.
   */
  open: InvoiceListed[];
  /**
   * Of these, overdue.
   */
  overdue: number;
  /**
   * Packages with lessons left, those that run out first on top.
   */
  packages: Package[];
}
/**
 * What stands in one currency, as decimals.
 *
 */
export interface Stands {
  /**
   * The currency.
   */
  currency: string;
  /**
   * Open on invoices.
   */
  open: string;
  /**
   * Paid and kept for later.
   */
  kept: string;
  /**
   * To be paid back.
   */
  to_pay_back: string;
  /**
   * Owed in lessons, without tax.
   */
  deferred: string;
}
/**
 * An invoice in a list.
 *
 */
export interface InvoiceListed {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name.
   */
  name: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  /**
   * The currency.
   */
  currency: string;
  /**
   * What it comes to, a decimal; of a draft, so far.
   */
  amount: string;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
}
/**
 * A package and what it owes.
 *
 */
export interface Package {
  id: PackageId;
  payer: PayerId;
  /**
   * The payer's name.
   */
  paid_by: string;
  /**
   * Whose lessons it pays for.
   */
  students: PaysFor[];
  /**
   * Its name.
   */
  words: string;
  /**
   * Lessons as sold.
   */
  lessons: number;
  /**
   * The length of each; `None` any.
   */
  minutes: number | null;
  /**
   * The currency.
   */
  currency: string;
  /**
   * What it cost, a decimal, as invoiced.
   */
  price: string;
  /**
   * What one such lesson costs on its own; empty while not known.
   */
  single: string;
  refund: PaidBackAs;
  /**
   * Whether nothing was paid for it.
   */
  gift: boolean;
  /**
   * The day it was sold; `None` while its invoice is a draft.
   */
  sold: Day | null;
  /**
   * The last day; `None` without end.
   */
  expires: Day | null;
  /**
   * Whether that day has passed.
   */
  run_out: boolean;
  /**
   * Lessons as sold, with those given on top.
   */
  whole: number;
  /**
   * Lessons left.
   */
  left: number;
  /**
   * Of these, those that planned lessons will use.
   */
  reserved: number;
  /**
   * Lessons given.
   */
  used: number;
  /**
   * Lessons lost: called off late, or missed.
   */
  lost: number;
  /**
   * Lessons that ran out.
   */
  lapsed: number;
  /**
   * What is owed in lessons, a decimal without tax.
   */
  deferred: string;
  /**
   * Where it stands, in a sentence.
   */
  stands: string;
}
/**
 * A student for whom someone pays.
 *
 */
export interface PaysFor {
  student: StudentId;
  /**
   * The name.
   */
  name: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface AccountsOwedInLessonsInput {}
/**
 * What is owed in lessons.
 *
 */
export interface AccountsOwedInLessonsOutput {
  /**
   * Percent of lessons that are expected to be taken; `None` while not set.
   */
  taken: number | null;
  /**
   * By currency.
   */
  sums: OwedIn[];
  /**
   * By package.
   */
  packages: PackageOwes[];
}
/**
 * What is owed in one currency. Amounts are decimals, without tax.
 *
 */
export interface OwedIn {
  /**
   * The currency.
   */
  currency: string;
  /**
   * Owed as it stands.
   */
  owed: string;
  /**
   * Owed when only so many are expected to be taken; empty while no percentage is set.
   */
  expected: string;
}
/**
 * What a package owes. Amounts are decimals, without tax.
 *
 */
export interface PackageOwes {
  package: PackageId;
  /**
   * Its name.
   */
  words: string;
  /**
   * Who paid.
   */
  paid_by: string;
  /**
   * The currency.
   */
  currency: string;
  /**
   * Lessons left.
   */
  left: number;
  /**
   * Owed as it stands.
   */
  owed: string;
  /**
   * Owed when only so many are expected to be taken; empty while no percentage is set.
   */
  expected: string;
}
/**
 * A lesson of a student, and what is known of how it ended.
 *
 */
export interface AccountsProposeInput {
  lesson: LessonId;
  student: StudentId;
  /**
   * Who called it off or broke it off; left out while not said.
   */
  because?: EndedBy | null;
  /**
   * When it was told, on the facility\u{2019}s clock, as YYYY-MM-DDTHH:MM; empty while not said.
   */
  told?: string;
}
/**
 * A lesson that is not settled.
 *
 */
export interface AccountsProposeOutput {
  lesson: LessonId;
  student: StudentId;
  /**
   * The name.
   */
  name: string;
  /**
   * Who would pay.
   */
  paid_by: string;
  day: Day;
  /**
   * What it was, as in "09:00, 60 minutes, Harbour Hall, given".
   */
  words: string;
  state: LessonState;
  /**
   * Why it did not take place.
   */
  reason: string;
  proposal: SettleProposal;
}
/**
 * How a lesson would be settled.
 *
 */
export interface SettleProposal {
  /**
   * How; `None` while something has to be said first.
   */
  how: SettledBy | null;
  /**
   * With which package.
   */
  package: PackageId | null;
  /**
   * Its name.
   */
  package_words: string;
  /**
   * What is charged, a decimal; empty where nothing is, or it is not known.
   */
  amount: string;
  /**
   * The currency.
   */
  currency: string;
  /**
   * What the court cost, this student\u{2019}s part of it; empty where nothing is passed on.
   */
  court: string;
  /**
   * The currency of the court.
   */
  court_currency: string;
  /**
   * Which rule of the terms applied, in words; empty for a lesson that was given.
   */
  rule: string;
  /**
   * When the next boundary was.
   */
  next: string;
  /**
   * What has to be said first, a sentence each.
   */
  asks: string[];
}
/**
 * Several lessons to settle.
 *
 */
export interface AccountsSettleInput {
  /**
   * Each.
   */
  lessons: Settle[];
}
/**
 * How a lesson is to be settled.
 *
 */
export interface Settle {
  lesson: LessonId;
  student: StudentId;
  /**
   * Who called it off or broke it off.
   */
  because?: EndedBy | null;
  /**
   * When it was told, on the facility\u{2019}s clock, as YYYY-MM-DDTHH:MM.
   */
  told?: string;
  how: SettledBy;
  /**
   * With which package; left out for the one that is proposed.
   */
  package?: PackageId | null;
  /**
   * What is charged, a decimal; empty for what is proposed.
   */
  amount?: string;
  /**
   * The currency, an ISO 4217 code; empty for what is proposed.
   */
  currency?: string;
  /**
   * What is charged for the court, a decimal; empty for what is proposed, 0 for nothing.
   */
  court?: string;
  /**
   * Why, where it is settled otherwise than the terms say.
   */
  reason?: string;
}
/**
 * What was settled.
 *
 */
export interface AccountsSettleOutput {
  /**
   * With packages.
   */
  by_package: number;
  /**
   * On invoices.
   */
  on_invoices: number;
  /**
   * For nothing.
   */
  free: number;
  /**
   * The same as a sentence.
   */
  words: string;
}
/**
 * What the accounts need.
 *
 */
export interface AccountsStay {
  /**
   * One line for each thing that was agreed or offered.
   */
  lines: string[];
  until: Day;
}
/**
 * An input with nothing in it.
 *
 */
export interface AccountsToSettleInput {}
/**
 * A lesson that is not settled.
 *
 */
export interface ToSettle {
  lesson: LessonId;
  student: StudentId;
  /**
   * The name.
   */
  name: string;
  /**
   * Who would pay.
   */
  paid_by: string;
  day: Day;
  /**
   * What it was, as in "09:00, 60 minutes, Harbour Hall, given".
   */
  words: string;
  state: LessonState;
  /**
   * Why it did not take place.
   */
  reason: string;
  proposal: SettleProposal;
}
/**
 * A settling to take back.
 *
 */
export interface AccountsUnsettleInput {
  lesson: LessonId;
  student: StudentId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A lesson that is not settled.
 *
 */
export interface AccountsUnsettleOutput {
  lesson: LessonId;
  student: StudentId;
  /**
   * The name.
   */
  name: string;
  /**
   * Who would pay.
   */
  paid_by: string;
  day: Day;
  /**
   * What it was, as in "09:00, 60 minutes, Harbour Hall, given".
   */
  words: string;
  state: LessonState;
  /**
   * Why it did not take place.
   */
  reason: string;
  proposal: SettleProposal;
}
/**
 * Which year.
 *
 */
export interface AccountsYearInput {
  /**
   * Its number.
   */
  year: number;
}
/**
 * A year.
 *
 */
export interface AccountsYearOutput {
  /**
   * Its number.
   */
  year: number;
  /**
   * What it comes to, by currency.
   */
  stands: MoneyYearStands[];
  /**
   * By month, account, kind, place and tax.
   */
  rows: MoneyYearRow[];
  /**
   * What was spent, by month and kind.
   */
  spent: MoneyYearSpent[];
  /**
   * Lessons that packages owe at its end.
   */
  lessons_owed: number;
  /**
   * Lessons that are over and not settled: none of them is in here.
   */
  to_settle: number;
}
/**
 * What a year comes to in one currency. Amounts are decimals.
 *
 */
export interface MoneyYearStands {
  /**
   * The currency.
   */
  currency: string;
  /**
   * Money that came in, less what was paid back.
   */
  received: string;
  /**
   * Earned, without tax.
   */
  earned: string;
  /**
   * Tax charged, less what was credited.
   */
  tax: string;
  /**
   * Given up.
   */
  written_off: string;
  /**
   * Spent.
   */
  spent: string;
  /**
   * Open on invoices at its end.
   */
  open: string;
  /**
   * Kept for later at its end.
   */
  kept: string;
  /**
   * To be paid back at its end.
   */
  to_pay_back: string;
  /**
   * Owed in lessons at its end, without tax.
   */
  deferred: string;
}
/**
 * A sum of a month. Amounts are decimals.
 *
 */
export interface MoneyYearRow {
  /**
   * The month, as YYYY-MM.
   */
  month: string;
  /**
   * The currency.
   */
  currency: string;
  account: LedgerAccount;
  /**
   * For what, of what is earned.
   */
  what: What | null;
  /**
   * Where, of what is earned; empty while not known.
   */
  place: string;
  /**
   * Category and rate of tax; empty where there is none.
   */
  tax: string;
  /**
   * How much: what came in, what was earned, what tax was charged. Below 0 what went back.
   */
  amount: string;
}
/**
 * What was spent in a month on one kind of thing. Amounts are decimals.
 *
 */
export interface MoneyYearSpent {
  /**
   * The month in which the costs began, as YYYY-MM.
   */
  month: string;
  kind: CostKind;
  /**
   * The currency.
   */
  currency: string;
  /**
   * How much.
   */
  amount: string;
  /**
   * The tax contained in it, as far as it was noted; empty where none was.
   */
  tax: string;
}
/**
 * An acknowledgement as kept.
 *
 */
export interface Acknowledgement {
  id: AcknowledgementId;
  notice: NoticeId;
  version: VersionId;
  /**
   * That version's number.
   */
  number: number;
  student: StudentId;
  /**
   * Who accepted it.
   */
  name: string;
  relation: Speaks;
  /**
   * What the guardian is to the student.
   */
  as_what: string;
  day: Day;
  how: OnWhat;
  /**
   * The signed paper.
   */
  scan: ScanNamed | null;
  /**
   * The seal: SHA-256 over the text's digest, the names and the day.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept.
   */
  whole: boolean;
  /**
   * Its title.
   */
  title: string;
}
/**
 * A scan as it is named.
 *
 */
export interface ScanNamed {
  id: ScanId;
  /**
   * The file's name.
   */
  name: string;
}
/**
 * A line of history.
 *
 */
export interface Act {
  id: ActId;
  /**
   * The command, as in `goals.touch`.
   */
  act: string;
  /**
   * What it did, in words.
   */
  label: string;
  at: Instant;
  /**
   * Whether Undo is offered: it did not leave the program, and was not undone yet.
   */
  undoable: boolean;
  /**
   * Whether it was undone since.
   */
  undone: boolean;
}
/**
 * What was added to a signed report.
 *
 */
export interface Addition {
  id: RowId;
  at: Instant;
  /**
   * What.
   */
  words: string;
  /**
   * By whom.
   */
  author: string;
}
/**
 * Someone a message goes to.
 *
 */
export interface Addressee {
  /**
   * Full name.
   */
  name: string;
  /**
   * The e-mail address; empty where none is known.
   */
  address: string;
}
/**
 * How long before it a court can be booked.
 *
 */
export interface Ahead {
  /**
   * For whom; empty for everyone.
   */
  who: string;
  /**
   * On which kind of court; empty for every court.
   */
  ground: string;
  /**
   * How many.
   */
  amount: number;
  unit: AheadUnit;
  /**
   * At this time of that day, HH:MM; empty for midnight. Not with hours.
   */
  opens: string;
}
/**
 * How long before it a court can be booked.
 *
 */
export interface AheadInput {
  /**
   * For whom; empty for everyone.
   */
  who?: string;
  /**
   * On which kind of court; empty for every court.
   */
  ground?: string;
  /**
   * How many.
   */
  amount?: number;
  unit?: AheadUnit;
  /**
   * At this time of that day, HH:MM; empty for midnight. Not with hours.
   */
  opens?: string;
}
/**
 * One answer beside what is kept.
 *
 */
export interface AnswerShown {
  /**
   * The field.
   */
  field: string;
  /**
   * What was asked.
   */
  question: string;
  /**
   * What is kept now.
   */
  now: string;
  /**
   * What the file says.
   */
  answer: string;
  /**
   * Why it cannot be taken; empty where it can.
   */
  against: string;
}
/**
 * The three answers.
 *
 */
export interface Answers {
  active: Answer;
  disease: Answer;
  symptoms: Answer;
}
/**
 * The three answers.
 *
 */
export interface AnswersInput {
  active?: Answer;
  disease?: Answer;
  symptoms?: Answer;
}
/**
 * What to plan.
 *
 */
export interface AskPlan {
  first: Day;
  last: Day;
  /**
   * Whose visits; none for everyone who wishes for lessons on these days.
   */
  visits?: VisitId[];
  /**
   * Where; none for the facilities of those visits.
   */
  facilities?: FacilityId[];
  /**
   * What ranks after the missing lessons, the most wished for first; none for the usual order.
   */
  order?: Wish[];
  /**
   * Lines of a plan that stay where they are.
   */
  locked?: PlanPlaceInput[];
  /**
   * What is taken to be otherwise than it is.
   */
  changes?: WhatIf[];
}
/**
 * Where a lesson of a plan is.
 *
 */
export interface PlanPlaceInput {
  visit: VisitId;
  /**
   * Who shares it, by their visits; none for a lesson of one student alone.
   */
  with?: VisitId[];
  court: CourtId;
  day: Day;
  starts: Time;
}
/**
 * Levels at a date.
 *
 */
export interface Assessment {
  id: AssessmentId;
  student: StudentId;
  /**
   * The visit, if it was at one.
   */
  visit: VisitId | null;
  day: Day;
  /**
   * The sport whose scale it uses.
   */
  sport: string;
  /**
   * A word about it.
   */
  note: string;
  /**
   * The levels, in the order of the sport's skills.
   */
  levels: Level[];
}
/**
 * A level on one skill, and the time before.
 *
 */
export interface Level {
  /**
   * The skill: a pack's id or one of the coach's own.
   */
  skill: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * The level, 0 to 4.
   */
  level: number;
  /**
   * The level's name and what is seen at it, as the pack has them.
   */
  anchor: string;
  basis: Basis;
  /**
   * A word about it.
   */
  note: string;
  /**
   * The level the time before, and the day of it.
   *
   * @minItems 2
   * @maxItems 2
   */
  before: [number, Day] | null;
}
/**
 * An assessment to write down.
 *
 */
export interface AssessmentsAssessInput {
  student: StudentId;
  /**
   * The visit, if it is at one.
   */
  visit?: VisitId | null;
  /**
   * The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
  /**
   * The levels given; skills left out are not assessed.
   */
  levels: LevelGiven[];
  /**
   * A word about it.
   */
  note?: string;
}
/**
 * A level given.
 *
 */
export interface LevelGiven {
  /**
   * The skill.
   */
  skill: string;
  /**
   * The level, 0 to 4.
   */
  level: number;
  /**
   * A word about it.
   */
  note?: string;
}
/**
 * Levels at a date.
 *
 */
export interface AssessmentsAssessOutput {
  id: AssessmentId;
  student: StudentId;
  /**
   * The visit, if it was at one.
   */
  visit: VisitId | null;
  day: Day;
  /**
   * The sport whose scale it uses.
   */
  sport: string;
  /**
   * A word about it.
   */
  note: string;
  /**
   * The levels, in the order of the sport's skills.
   */
  levels: Level[];
}
/**
 * Another level for one skill of an assessment.
 *
 */
export interface AssessmentsChangeLevelInput {
  assessment: AssessmentId;
  level: LevelGiven;
}
/**
 * Levels at a date.
 *
 */
export interface AssessmentsChangeLevelOutput {
  id: AssessmentId;
  student: StudentId;
  /**
   * The visit, if it was at one.
   */
  visit: VisitId | null;
  day: Day;
  /**
   * The sport whose scale it uses.
   */
  sport: string;
  /**
   * A word about it.
   */
  note: string;
  /**
   * The levels, in the order of the sport's skills.
   */
  levels: Level[];
}
/**
 * Norms as typed. With every field empty, the test has none any more.
 *
 */
export interface AssessmentsGiveNormsInput {
  /**
   * The pack's id.
   */
  sport: string;
  /**
   * The test.
   */
  test: string;
  /**
   * The mean.
   */
  mean?: string;
  /**
   * The standard deviation.
   */
  sd?: string;
  /**
   * The reliability, 0 to 1; empty where it is not known.
   */
  reliability?: string;
  /**
   * Where the numbers are from.
   */
  source?: string;
}
/**
 * Norms of a test.
 *
 */
export interface Norms {
  /**
   * The mean of the results.
   */
  mean: number;
  /**
   * Their standard deviation.
   */
  sd: number;
  /**
   * How far test and retest agree, 0 to 1, where it is known.
   */
  reliability: number | null;
  /**
   * Where the numbers are from.
   */
  source: string;
}
/**
 * Whose.
 *
 */
export interface AssessmentsListInput {
  student: StudentId;
}
/**
 * Of which sport.
 *
 */
export interface AssessmentsNormsInput {
  /**
   * The pack's id.
   */
  sport: string;
}
/**
 * A test with the coach's own norms.
 *
 */
export interface TestNorms {
  /**
   * The test.
   */
  test: string;
  norms: Norms;
}
/**
 * A test to write down.
 *
 */
export interface AssessmentsTakeTestInput {
  student: StudentId;
  /**
   * The visit, if it is at one.
   */
  visit?: VisitId | null;
  /**
   * The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
  /**
   * The test of the student's sport.
   */
  test: string;
  /**
   * What was counted, each part once.
   */
  parts: PartCounted[];
  /**
   * A word about it.
   */
  note?: string;
}
/**
 * What was counted in one part.
 *
 */
export interface PartCounted {
  /**
   * The part of the test.
   */
  part: string;
  /**
   * Its points or hits; of a timed part, whole seconds.
   */
  counted: number;
}
/**
 * A test as it was taken.
 *
 */
export interface AssessmentsTakeTestOutput {
  id: TestId;
  /**
   * The visit, if it was at one.
   */
  visit: VisitId | null;
  day: Day;
  /**
   * The test.
   */
  test: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * Where it is published.
   */
  source: string;
  /**
   * What was counted, part by part.
   */
  parts: PartCounted[];
  /**
   * What it adds up to.
   */
  total: number;
  /**
   * The most it can give, where there is one.
   */
  most: number | null;
  /**
   * What the printed tables say of the total, each with for whom: "Men: ITN 6".
   */
  says: string[];
  /**
   * The total less that of the time before, and the day of it.
   *
   * @minItems 2
   * @maxItems 2
   */
  change: [number, Day] | null;
  /**
   * The coach's own norms of the test, where there are any.
   */
  norms: Norms | null;
  /**
   * What the change is worth by those norms: "smaller than the error of the test (5.6)".
   */
  worth: string;
  /**
   * By those norms: the T-score, 50 at their mean and 10 a standard deviation.
   */
  t_score: number | null;
  /**
   * By those norms: how many in a hundred are below, were they normally distributed.
   */
  percentile: number | null;
  /**
   * A word about it.
   */
  note: string;
}
/**
 * Whose.
 *
 */
export interface AssessmentsTestsInput {
  student: StudentId;
}
/**
 * A test as it was taken.
 *
 */
export interface TestTaken {
  id: TestId;
  /**
   * The visit, if it was at one.
   */
  visit: VisitId | null;
  day: Day;
  /**
   * The test.
   */
  test: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * Where it is published.
   */
  source: string;
  /**
   * What was counted, part by part.
   */
  parts: PartCounted[];
  /**
   * What it adds up to.
   */
  total: number;
  /**
   * The most it can give, where there is one.
   */
  most: number | null;
  /**
   * What the printed tables say of the total, each with for whom: "Men: ITN 6".
   */
  says: string[];
  /**
   * The total less that of the time before, and the day of it.
   *
   * @minItems 2
   * @maxItems 2
   */
  change: [number, Day] | null;
  /**
   * The coach's own norms of the test, where there are any.
   */
  norms: Norms | null;
  /**
   * What the change is worth by those norms: "smaller than the error of the test (5.6)".
   */
  worth: string;
  /**
   * By those norms: the T-score, 50 at their mean and 10 a standard deviation.
   */
  t_score: number | null;
  /**
   * By those norms: how many in a hundred are below, were they normally distributed.
   */
  percentile: number | null;
  /**
   * A word about it.
   */
  note: string;
}
/**
 * Where and when someone is to play, before there is a lesson.
 *
 */
export interface AtPlace {
  student: StudentId;
  day: Day;
  facility: FacilityId;
  /**
   * On which court, once known.
   */
  court?: CourtId | null;
}
/**
 * A student in a lesson.
 *
 */
export interface Attending {
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  visit: VisitId;
  /**
   * The student's own rating of the effort, 0 to 10; `None` while not told.
   */
  effort: number | null;
}
/**
 * A visit whose month has come or passed without days.
 *
 */
export interface Awaited {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * "around May 2026".
   */
  when: string;
  /**
   * Whether the span is over.
   */
  passed: boolean;
}
/**
 * A copy of the file.
 *
 */
export interface BackupKept {
  /**
   * Where it is, or was put.
   */
  path: string;
  made: Day;
  lapses: Day;
  /**
   * Whether it is past that day.
   */
  late: boolean;
  /**
   * What is known of it, as a sentence.
   */
  words: string;
}
/**
 * The copies the program knows of.
 *
 */
export interface Backups {
  /**
   * So many months they are kept.
   */
  months: number;
  /**
   * The oldest first.
   */
  backups: BackupKept[];
}
/**
 * The results that mean one level, both ends included.
 *
 */
export interface Band {
  /**
   * The level's name.
   */
  level: string;
  /**
   * The lowest result.
   */
  from: number;
  /**
   * The highest result; left out where the table has no end.
   */
  to?: number | null;
}
/**
 * A printed table from a result to a level.
 *
 */
export interface BandTable {
  /**
   * A short name that never changes, such as `women`.
   */
  id: string;
  /**
   * For whom, as printed.
   */
  name: string;
  /**
   * The bands, from the lowest result to the highest.
   */
  bands: Band[];
}
/**
 * What has to be chosen before the rows of a file can be read.
 *
 */
export interface BankAsk {
  /**
   * Which of the columns, by its field in the choice.
   */
  field: string;
  /**
   * What to choose, and why it is asked.
   */
  words: string;
}
/**
 * Which column of a CSV file is what: its place in the head, counted from 0.
 *
 */
export interface BankColumns {
  /**
   * The day.
   */
  day: number | null;
  /**
   * The amount, below 0 for what went out.
   */
  amount: number | null;
  /**
   * What came in, where that has a column of its own.
   */
  money_in: number | null;
  /**
   * What went out, where that has a column of its own.
   */
  money_out: number | null;
  /**
   * Whether the amount came in or went out, where a column says so.
   */
  side: number | null;
  /**
   * The currency.
   */
  currency: number | null;
  /**
   * The currency of every row that names none; empty while not known.
   */
  one_currency: string;
  /**
   * Who paid.
   */
  name: number | null;
  /**
   * What stood on it.
   */
  words: number | null;
  /**
   * The bank\u{2019}s own reference.
   */
  reference: number | null;
  dates: DateOrder;
  decimals: BankDecimals;
}
/**
 * Which column of a CSV file is what: its place in the head, counted from 0.
 *
 */
export interface BankColumnsInput {
  /**
   * The day.
   */
  day?: number | null;
  /**
   * The amount, below 0 for what went out.
   */
  amount?: number | null;
  /**
   * What came in, where that has a column of its own.
   */
  money_in?: number | null;
  /**
   * What went out, where that has a column of its own.
   */
  money_out?: number | null;
  /**
   * Whether the amount came in or went out, where a column says so.
   */
  side?: number | null;
  /**
   * The currency.
   */
  currency?: number | null;
  /**
   * The currency of every row that names none; empty while not known.
   */
  one_currency?: string;
  /**
   * Who paid.
   */
  name?: number | null;
  /**
   * What stood on it.
   */
  words?: number | null;
  /**
   * The bank\u{2019}s own reference.
   */
  reference?: number | null;
  dates?: DateOrder;
  decimals?: BankDecimals;
}
/**
 * Rows to enter.
 *
 */
export interface BankEnterInput {
  /**
   * The rows.
   */
  rows: BankRowToEnter[];
  /**
   * How the file was read, to be remembered; left out for a file that says so itself.
   */
  layout?: BankLayout | null;
}
/**
 * A row that the coach confirmed.
 *
 */
export interface BankRowToEnter {
  /**
   * Its reference, as it was read.
   */
  reference: string;
  /**
   * The day, as YYYY-MM-DD.
   */
  day: string;
  /**
   * The currency.
   */
  currency: string;
  /**
   * How much, a decimal.
   */
  amount: string;
  /**
   * What stood on it.
   */
  words?: string;
  /**
   * From whom.
   */
  payer?: PayerId | null;
  /**
   * For which invoices, in this order, as far as the money goes; none for those due first. What is
   * over is kept for later.
   */
  invoices?: InvoiceId[];
  /**
   * Whether all of it is kept for later.
   */
  keep?: boolean;
}
/**
 * How a file was read, to be remembered for the next of the same bank.
 *
 */
export interface BankLayout {
  /**
   * The names of its columns.
   */
  head: string[];
  columns: BankColumnsInput;
}
/**
 * What was entered.
 *
 */
export interface BankEnterOutput {
  /**
   * Each row, in the same order.
   */
  rows: BankEnteredRow[];
  /**
   * As a sentence: how many, and how much in each currency.
   */
  words: string;
}
/**
 * A row as entered.
 *
 */
export interface BankEnteredRow {
  entry: EntryId;
  payer: PayerId;
  /**
   * As a sentence: who, how much, and what became of it.
   */
  words: string;
}
/**
 * Something in a file that was not read.
 *
 */
export interface BankNotRead {
  /**
   * The line of the file.
   */
  line: number;
  /**
   * Why.
   */
  words: string;
}
/**
 * What a row seems to be.
 *
 */
export interface BankProposal {
  /**
   * Whether more than one thing speaks for it.
   */
  sure: boolean;
  /**
   * From whom; `None` when the coach has to say.
   */
  payer: PayerId | null;
  /**
   * For which invoices, in this order; none for those that are due first.
   */
  invoices: InvoiceId[];
  /**
   * Whether all of it is kept for later.
   */
  keep: boolean;
  /**
   * Why, as a sentence.
   */
  why: string;
}
/**
 * A file of a bank to read.
 *
 */
export interface BankReadInput {
  /**
   * The file\u{2019}s bytes, in base64.
   */
  content: string;
  /**
   * For a CSV file, which column is what; left out for what is remembered or proposed.
   */
  columns?: BankColumnsInput | null;
}
/**
 * What a file holds.
 *
 */
export interface BankReadOutput {
  kind: BankFileKind;
  /**
   * The same as a sentence.
   */
  words: string;
  /**
   * The names of the columns of a CSV file.
   */
  head: string[];
  /**
   * Its first rows, as they stand.
   */
  first_rows: string[][];
  /**
   * Which column is taken as what.
   */
  columns: BankColumns | null;
  /**
   * Whether that is remembered from an earlier file.
   */
  remembered: boolean;
  /**
   * What is to be chosen first; then there are no rows.
   */
  asks: BankAsk[];
  /**
   * The rows, as they stand in the file.
   */
  rows: BankRow[];
  /**
   * What was not read, and why.
   */
  not_read: BankNotRead[];
  /**
   * How many entries the bank has not booked yet; they are left out.
   */
  pending: number;
}
/**
 * A row of a bank statement.
 *
 */
export interface BankRow {
  /**
   * The line of the file it begins on.
   */
  line: number;
  day: Day;
  /**
   * The currency.
   */
  currency: string;
  /**
   * How much, a decimal above 0 whichever way it went.
   */
  amount: string;
  /**
   * Who paid, as the bank has it.
   */
  name: string;
  /**
   * What stood on it.
   */
  words: string;
  /**
   * The bank\u{2019}s own reference.
   */
  bank_reference: string;
  /**
   * Under which reference it is entered, or would be.
   */
  reference: string;
  state: BankRowState;
  proposal: BankProposal;
}
/**
 * A block of tries.
 *
 */
export interface Block {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * Tries at one thing, and how many of them were made.
 *
 */
export interface Count {
  /**
   * How many tries were made.
   */
  made: number;
  /**
   * How many tries there were.
   */
  tries: number;
}
/**
 * Misses put down to one reason.
 *
 */
export interface Miss {
  /**
   * The reason, in the coach's words.
   */
  reason: string;
  /**
   * How many misses.
   */
  times: number;
}
/**
 * A court booking as stored.
 *
 */
export interface Booking {
  id: BookingId;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * On which court; left out for whichever is free.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  day: Day;
  starts: Time;
  /**
   * Its length in minutes.
   */
  minutes: number;
  state: BookingState;
  /**
   * The day it was asked for.
   */
  asked: Day | null;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The facility's own reference for it.
   */
  reference: string;
  /**
   * Who answered.
   */
  by_whom: string;
  /**
   * The coach's note.
   */
  note: string;
}
/**
 * Lessons whose courts are asked for.
 *
 */
export interface BookingsAskInput {
  /**
   * Which lessons.
   */
  lessons: LessonId[];
}
/**
 * What a facility answered.
 *
 */
export interface BookingsConfirmInput {
  lesson: LessonId;
  /**
   * The court it gave; left out where it named none.
   */
  court?: CourtId | null;
  /**
   * Its own reference.
   */
  reference?: string;
  /**
   * Who answered.
   */
  by_whom?: string;
  /**
   * The coach's note.
   */
  note?: string;
}
/**
 * A court booking as stored.
 *
 */
export interface BookingsConfirmOutput {
  id: BookingId;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * On which court; left out for whichever is free.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  day: Day;
  starts: Time;
  /**
   * Its length in minutes.
   */
  minutes: number;
  state: BookingState;
  /**
   * The day it was asked for.
   */
  asked: Day | null;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The facility's own reference for it.
   */
  reference: string;
  /**
   * Who answered.
   */
  by_whom: string;
  /**
   * The coach's note.
   */
  note: string;
}
/**
 * A court given back.
 *
 */
export interface BookingsGiveBackInput {
  booking: BookingId;
  /**
   * Who took it back.
   */
  by_whom?: string;
  /**
   * The coach's note.
   */
  note?: string;
}
/**
 * A court booking as stored.
 *
 */
export interface BookingsGiveBackOutput {
  id: BookingId;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * On which court; left out for whichever is free.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  day: Day;
  starts: Time;
  /**
   * Its length in minutes.
   */
  minutes: number;
  state: BookingState;
  /**
   * The day it was asked for.
   */
  asked: Day | null;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The facility's own reference for it.
   */
  reference: string;
  /**
   * Who answered.
   */
  by_whom: string;
  /**
   * The coach's note.
   */
  note: string;
}
/**
 * Which courts.
 *
 */
export interface BookingsListInput {
  /**
   * From this day; left out for today.
   */
  from?: Day | null;
  /**
   * Until this day; left out for all that is to come.
   */
  to?: Day | null;
  /**
   * Of the lessons of one visit only.
   */
  visit?: VisitId | null;
}
/**
 * A court that a lesson needs, or one that no lesson needs any more.
 *
 */
export interface CourtNeeded {
  state: CourtState;
  /**
   * The lesson; left out for a court to be given back.
   */
  lesson: LessonId | null;
  /**
   * Whose lesson: the first student's visit.
   */
  visit: VisitId | null;
  /**
   * The first student.
   */
  student: StudentId | null;
  /**
   * Everyone in the lesson, in words; empty without one.
   */
  names: string;
  /**
   * The booking, once it was asked for.
   */
  booking: Booking | null;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  day: Day;
  starts: Time;
  ends: Time;
  /**
   * From when it can be asked for; left out when no rule says.
   */
  ask_from: Given | null;
  /**
   * Whether it can be asked for now: the day has come, or no rule says.
   */
  open: boolean;
  /**
   * What it costs, as in "18.00 EUR"; empty when no rule says.
   */
  cost: string;
  /**
   * Until when it can be given back free; left out when no rule says.
   */
  free_until: Given | null;
  /**
   * When to ask, until when to give back and what it costs later, a sentence each.
   */
  words: string[];
  /**
   * What speaks against it, a sentence each.
   */
  against: string[];
}
/**
 * A day and a time on the facility's clock.
 *
 */
export interface Given {
  day: Day;
  time: Time;
}
/**
 * Lessons to write about.
 *
 */
export interface BookingsMessageInput {
  /**
   * Which lessons, all at one facility.
   */
  lessons: LessonId[];
}
/**
 * What to write, and what to say.
 *
 */
export interface BookingsMessageOutput {
  facility: FacilityId;
  /**
   * Its name.
   */
  place: string;
  /**
   * The desk's address, or empty.
   */
  to: string;
  /**
   * The desk's telephone, or empty.
   */
  phone: string;
  /**
   * The subject of the message.
   */
  subject: string;
  /**
   * The message.
   */
  words: string;
  /**
   * What to have at hand on the telephone, a line each.
   */
  notes: string[];
}
/**
 * What a facility answered.
 *
 */
export interface BookingsRefuseInput {
  lesson: LessonId;
  /**
   * The court it gave; left out where it named none.
   */
  court?: CourtId | null;
  /**
   * Its own reference.
   */
  reference?: string;
  /**
   * Who answered.
   */
  by_whom?: string;
  /**
   * The coach's note.
   */
  note?: string;
}
/**
 * A court booking as stored.
 *
 */
export interface BookingsRefuseOutput {
  id: BookingId;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * On which court; left out for whichever is free.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  day: Day;
  starts: Time;
  /**
   * Its length in minutes.
   */
  minutes: number;
  state: BookingState;
  /**
   * The day it was asked for.
   */
  asked: Day | null;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The facility's own reference for it.
   */
  reference: string;
  /**
   * Who answered.
   */
  by_whom: string;
  /**
   * The coach's note.
   */
  note: string;
}
/**
 * A heading to jump to.
 *
 */
export interface Bookmark {
  /**
   * Its words.
   */
  words: string;
  /**
   * The page, counted from 0.
   */
  page: number;
  /**
   * How far down.
   */
  y: number;
}
/**
 * How a broken line is made up: a piece at each wall, and between them gaps and dashes in turn.
 *
 */
export interface Broken {
  /**
   * The length of the piece at each wall.
   */
  at_each_wall: number;
  /**
   * The number of gaps.
   */
  gaps: number;
  /**
   * The length of a gap.
   */
  gap: number;
  /**
   * The number of dashes between the gaps.
   */
  dashes: number;
  /**
   * The length of a dash.
   */
  dash: number;
}
/**
 * Something that takes the coach's time; the form and the record are the same.
 *
 */
export interface Busy {
  /**
   * What it is, as in league night.
   */
  what: string;
  /**
   * The first day, as YYYY-MM-DD.
   */
  first: string;
  /**
   * Of a span, its last day; of what comes again, the last day on which it can. Empty for the
   * first day alone, and for without end.
   */
  last: string;
  /**
   * From this time on each of its days; empty for the whole day.
   */
  starts: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends: string;
  /**
   * The zone these times are in; empty for wherever the coach is.
   */
  zone: string;
  again: Again;
  /**
   * Of what comes every week or second week: on which days, 1 for Monday; none for that of the
   * first day.
   */
  weekdays: number[];
  /**
   * Days on which it does not take place.
   */
  except: string[];
}
/**
 * Something that takes the coach's time; the form and the record are the same.
 *
 */
export interface BusyInput {
  /**
   * What it is, as in league night.
   */
  what?: string;
  /**
   * The first day, as YYYY-MM-DD.
   */
  first?: string;
  /**
   * Of a span, its last day; of what comes again, the last day on which it can. Empty for the
   * first day alone, and for without end.
   */
  last?: string;
  /**
   * From this time on each of its days; empty for the whole day.
   */
  starts?: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends?: string;
  /**
   * The zone these times are in; empty for wherever the coach is.
   */
  zone?: string;
  again?: Again;
  /**
   * Of what comes every week or second week: on which days, 1 for Monday; none for that of the
   * first day.
   */
  weekdays?: number[];
  /**
   * Days on which it does not take place.
   */
  except?: string[];
}
/**
 * Something that takes the coach's time, as stored.
 *
 */
export interface BusyShown {
  id: BusyId;
  busy: Busy;
  /**
   * When, in words.
   */
  words: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface CalendarAccountInput {}
/**
 * The server as it is set up, and how far the two sides are apart.
 *
 */
export interface CalendarAccountOutput {
  /**
   * Where the calendars are; empty before a server was chosen.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user: string;
  /**
   * Its calendars that are made use of.
   */
  calendars: OwnCalendar[];
  /**
   * So many lessons are not on the server as they stand here.
   */
  to_write: number;
  /**
   * Lessons of which the server says something else.
   */
  differs: Difference[];
}
/**
 * A calendar of the coach's.
 *
 */
export interface OwnCalendar {
  id: CalendarId;
  /**
   * What it is called.
   */
  name: string;
  role: CalendarRole;
  /**
   * Its path on the server; nothing of one that was read from a file.
   */
  href: string | null;
  /**
   * When it was read last; nothing before it ever was.
   */
  read: Instant | null;
  /**
   * The last day for which its times are known.
   */
  until: Day | null;
  /**
   * How many events it holds.
   */
  events: number;
  /**
   * What could not be read, a sentence each.
   */
  notes: string[];
  /**
   * What is known of it, as a sentence.
   */
  words: string;
}
/**
 * A lesson of which the server says something else.
 *
 */
export interface Difference {
  lesson: LessonId;
  /**
   * Whose, or what it was called when it was written there.
   */
  what: string;
  /**
   * What stands here.
   */
  here: string;
  /**
   * What the server says.
   */
  there: string;
  /**
   * What taking the server's word does here, as on a button; empty where it cannot be taken.
   */
  take: string;
  /**
   * What keeping to what stands here does there.
   */
  put_back: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface CalendarCalendarsInput {}
/**
 * Which visit.
 *
 */
export interface CalendarDueInput {
  visit: VisitId;
}
/**
 * An invitation that is due.
 *
 */
export interface InvitationDue {
  lesson: LessonId;
  student: StudentId;
  kind: InvitationKind;
  /**
   * As a sentence.
   */
  words: string;
  /**
   * The SEQUENCE it will have.
   */
  sequence: number;
  /**
   * Why it cannot be written; empty when it can.
   */
  trouble: string;
}
/**
 * Which lesson.
 *
 */
export interface CalendarFollowsInput {
  lesson: LessonId;
}
/**
 * What follows.
 *
 */
export interface CalendarFollowsOutput {
  /**
   * What became of the lesson, as a sentence.
   */
  words: string;
  /**
   * Whom to tell.
   */
  tell: ToTell[];
  /**
   * Courts there that no lesson needs any more, the first to cost something first.
   */
  give_back: ToGiveBack[];
  /**
   * The court to ask for, as a sentence; empty when there is none.
   */
  ask: string;
}
/**
 * Someone to tell.
 *
 */
export interface ToTell {
  student: StudentId;
  visit: VisitId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The guardian's name, where the student is written to through one; else empty.
   */
  by: string;
  /**
   * To whom it goes, as a sentence, where that is not the student alone.
   */
  to: string;
  /**
   * A message to copy.
   */
  message: string;
  /**
   * Whether an invitation that was sent before is now to be changed or called off.
   */
  invited: boolean;
  /**
   * Why that cannot be written; empty when it can.
   */
  trouble: string;
}
/**
 * A court to give back.
 *
 */
export interface ToGiveBack {
  booking: BookingId;
  /**
   * "Court 1 at Harbour Hall, Tuesday 10 March 2026, 09:00 to 10:00".
   */
  what: string;
  /**
   * Until when that is free, and what it costs later, a sentence each.
   */
  words: string[];
  /**
   * Whether the first of these has passed.
   */
  late: boolean;
}
/**
 * An input with nothing in it.
 *
 */
export interface CalendarLeaveInput {}
/**
 * The server as it is set up, and how far the two sides are apart.
 *
 */
export interface CalendarLeaveOutput {
  /**
   * Where the calendars are; empty before a server was chosen.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user: string;
  /**
   * Its calendars that are made use of.
   */
  calendars: OwnCalendar[];
  /**
   * So many lessons are not on the server as they stand here.
   */
  to_write: number;
  /**
   * Lessons of which the server says something else.
   */
  differs: Difference[];
}
/**
 * Which lesson the coach decides about.
 *
 */
export interface CalendarPutBackInput {
  lesson: LessonId;
}
/**
 * Which lesson the coach decides about.
 *
 */
export interface CalendarPutBackOutput {
  lesson: LessonId;
}
/**
 * A calendar file to read.
 *
 */
export interface CalendarReadInput {
  /**
   * The calendar it takes the place of; left out for a new one.
   */
  calendar?: CalendarId | null;
  /**
   * What a new one is called.
   */
  name?: string;
  /**
   * The whole text of the file.
   */
  text: string;
}
/**
 * A calendar of the coach's.
 *
 */
export interface CalendarReadOutput {
  id: CalendarId;
  /**
   * What it is called.
   */
  name: string;
  role: CalendarRole;
  /**
   * Its path on the server; nothing of one that was read from a file.
   */
  href: string | null;
  /**
   * When it was read last; nothing before it ever was.
   */
  read: Instant | null;
  /**
   * The last day for which its times are known.
   */
  until: Day | null;
  /**
   * How many events it holds.
   */
  events: number;
  /**
   * What could not be read, a sentence each.
   */
  notes: string[];
  /**
   * What is known of it, as a sentence.
   */
  words: string;
}
/**
 * Which calendar.
 *
 */
export interface CalendarRemoveInput {
  calendar: CalendarId;
}
/**
 * A calendar of the coach's.
 *
 */
export interface CalendarRemoveOutput {
  id: CalendarId;
  /**
   * What it is called.
   */
  name: string;
  role: CalendarRole;
  /**
   * Its path on the server; nothing of one that was read from a file.
   */
  href: string | null;
  /**
   * When it was read last; nothing before it ever was.
   */
  read: Instant | null;
  /**
   * The last day for which its times are known.
   */
  until: Day | null;
  /**
   * How many events it holds.
   */
  events: number;
  /**
   * What could not be read, a sentence each.
   */
  notes: string[];
  /**
   * What is known of it, as a sentence.
   */
  words: string;
}
/**
 * The server and what its calendars are for.
 *
 */
export interface CalendarSetAccountInput {
  /**
   * Where the calendars are.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user?: string;
  /**
   * Those that say when the coach is taken.
   */
  busy?: OnServer[];
  /**
   * The one lessons are written into; nothing for none.
   */
  lessons?: OnServer | null;
}
/**
 * A calendar on the server.
 *
 */
export interface OnServer {
  /**
   * Its path there.
   */
  href: string;
  /**
   * What it is called.
   */
  name: string;
}
/**
 * The server as it is set up, and how far the two sides are apart.
 *
 */
export interface CalendarSetAccountOutput {
  /**
   * Where the calendars are; empty before a server was chosen.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user: string;
  /**
   * Its calendars that are made use of.
   */
  calendars: OwnCalendar[];
  /**
   * So many lessons are not on the server as they stand here.
   */
  to_write: number;
  /**
   * Lessons of which the server says something else.
   */
  differs: Difference[];
}
/**
 * Which lesson the coach decides about.
 *
 */
export interface CalendarTakeInput {
  lesson: LessonId;
}
/**
 * A lesson as stored.
 *
 */
export interface CalendarTakeOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * Which visit.
 *
 */
export interface CalendarWrittenInput {
  visit: VisitId;
}
/**
 * So many invitations were written.
 *
 */
export interface CalendarWrittenOutput {
  /**
   * How many.
   */
  invitations: number;
}
/**
 * Whom to ask, and where to turn; the form and the record are the same.
 *
 */
export interface Card {
  /**
   * Who is at the desk.
   */
  desk?: string;
  /**
   * The desk's telephone.
   */
  desk_phone?: string;
  /**
   * The desk's e-mail address.
   */
  desk_email?: string;
  /**
   * The exact address and entrance, as told to an ambulance.
   */
  entrance?: string;
  /**
   * Where a telephone is, and the local emergency number.
   */
  phone?: string;
  /**
   * Where the defibrillator is.
   */
  defibrillator?: string;
  /**
   * Where first aid is.
   */
  first_aid?: string;
  /**
   * The nearest hospital.
   */
  hospital?: string;
  /**
   * The day the coach looked, as YYYY-MM-DD.
   */
  seen?: string;
}
/**
 * One goal's row of a card.
 *
 */
export interface CardRow {
  goal: GoalId;
  /**
   * The retest, its first tries left out; left out where there was none.
   */
  retest?: Counted | null;
  /**
   * Practice.
   */
  practice?: Counted | null;
  /**
   * The end test.
   */
  end_test?: Counted | null;
}
/**
 * What was counted in one block.
 *
 */
export interface Counted {
  /**
   * How many were made.
   */
  made: number;
  /**
   * Of how many.
   */
  tries: number;
}
/**
 * A cell: one goal at one visit.
 *
 */
export interface Cell {
  visit: VisitId;
  /**
   * What is drawn: the retest, the last end test, a look back.
   */
  marks: Mark[];
  practice: Count;
  /**
   * Whole games there: how often it happened in each.
   */
  games: number[];
}
/**
 * A mark: one block with its rate and rough range.
 *
 */
export interface Mark {
  block: BlockId;
  kind: Kind;
  source: Source;
  count: Count;
  /**
   * Made ÷ tries.
   */
  rate: number;
  /**
   * Lower end of the rough range of the true rate (Wilson, 95 %).
   */
  low: number;
  /**
   * Upper end.
   */
  high: number;
  /**
   * Fewer tries than the criterion asks for.
   */
  short: boolean;
}
/**
 * A paper as kept.
 *
 */
export interface Certificate {
  id: CertificateId;
  paper: Paper;
  /**
   * A scan of it.
   */
  scan: ScanNamed | null;
  /**
   * Whether it has ended.
   */
  over: boolean;
  /**
   * Whether it ends soon.
   */
  soon: boolean;
  /**
   * Until when it holds, in words.
   */
  stands: string;
}
/**
 * A paper; the form and the record are the same.
 *
 */
export interface Paper {
  kind: CertificateKind;
  /**
   * Its name.
   */
  words: string;
  /**
   * Who issued it.
   */
  by_whom: string;
  /**
   * Its number.
   */
  number: string;
  /**
   * The day it was issued, as YYYY-MM-DD.
   */
  since: string;
  /**
   * The last day it holds; empty for without end.
   */
  until: string;
}
/**
 * How a player of one strength fares.
 *
 */
export interface Chance {
  /**
   * The player's true rate.
   */
  true_rate: number;
  /**
   * The chance to reach the criterion in one block.
   */
  one_block: number;
  /**
   * The chance to reach it in at least one of five blocks.
   */
  any_of_five: number;
}
/**
 * A clash.
 *
 */
export interface Clash {
  who: Who;
  with: LessonId;
  /**
   * In words.
   */
  words: string;
}
/**
 * A clearance as recorded.
 *
 */
export interface Clearance {
  id: ClearanceId;
  student: StudentId;
  /**
   * After which injury.
   */
  injury: InjuryId | null;
  /**
   * Who wrote it.
   */
  by_whom: string;
  /**
   * What they are.
   */
  profession: string;
  day: Day;
  /**
   * What it says.
   */
  says: string;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * The paper.
   */
  scan: ScanNamed | null;
  /**
   * Where the coach read it; empty where the paper is kept here.
   */
  seen: string;
  /**
   * The day it was withdrawn.
   */
  withdrawn: Day | null;
  /**
   * Why.
   */
  why: string;
}
/**
 * When a facility, or a court of it, cannot be booked.
 *
 */
export interface Closure {
  /**
   * One court; left out for all.
   */
  court: CourtId | null;
  /**
   * From this day; empty for always.
   */
  first: string;
  /**
   * Until this day.
   */
  last: string;
  /**
   * On which days of the week; none for every day.
   */
  weekdays: number[];
  /**
   * From this time; empty for the whole day.
   */
  starts: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends: string;
  /**
   * Why: open play, a tournament, a holiday.
   */
  reason: string;
}
/**
 * When a facility, or a court of it, cannot be booked.
 *
 */
export interface ClosureInput {
  /**
   * One court; left out for all.
   */
  court?: CourtId | null;
  /**
   * From this day; empty for always.
   */
  first?: string;
  /**
   * Until this day.
   */
  last?: string;
  /**
   * On which days of the week; none for every day.
   */
  weekdays?: number[];
  /**
   * From this time; empty for the whole day.
   */
  starts?: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends?: string;
  /**
   * Why: open play, a tournament, a holiday.
   */
  reason?: string;
}
/**
 * The coach's day.
 *
 */
export interface CoachDay {
  day: Day;
  /**
   * The clock its times are on: that of the first lesson, or of whoever is in town.
   */
  zone: string;
  /**
   * Whether no lesson can be given: the coach's week has no hours then.
   */
  off: boolean;
  /**
   * What takes the coach's time, the first first.
   */
  taken: TakenOn[];
  /**
   * The ways between lessons.
   */
  ways: WayOn[];
  /**
   * How many lessons.
   */
  lessons: number;
  /**
   * Minutes of them, those called off or missed left out.
   */
  minutes: number;
  /**
   * The most minutes of lessons a day; left out without a limit.
   */
  limit: number | null;
  /**
   * Whether someone is in town.
   */
  someone: boolean;
}
/**
 * Something that takes the coach's time on a day.
 *
 */
export interface TakenOn {
  /**
   * What it is.
   */
  what: string;
  /**
   * From when on the clock of that day; left out for the whole day.
   */
  from: Time | null;
  /**
   * Until when; 00:00 is the day's end.
   */
  to: Time | null;
}
/**
 * A way from one facility to another between two lessons of a day.
 *
 */
export interface WayOn {
  /**
   * From this facility.
   */
  from: string;
  /**
   * To this one.
   */
  to: string;
  /**
   * How long it takes; left out when no way was written down.
   */
  minutes: number | null;
  /**
   * How long there is between the two lessons.
   */
  between: number;
}
/**
 * A column: a visit.
 *
 */
export interface Column {
  visit: VisitId;
  /**
   * Its month, as in "Mar 26".
   */
  head: string;
  /**
   * The word under it, as in "late flight".
   */
  note: string;
  first_day: Day;
  last_day: Day;
  /**
   * Whether it is going on.
   */
  open: boolean;
}
/**
 * Why rows could not be read with these columns.
 *
 */
export interface ColumnProblem {
  role: Role;
  /**
   * `column_missing`, `no_such_column` or `column_used_twice`.
   */
  code: string;
  /**
   * What is wrong, for a person.
   */
  words: string;
}
/**
 * Which column plays which role: the role and the column's place in the head, counted from 0.
 *
 */
export interface Columns {
  [k: string]: number;
}
/**
 * Someone who is not in the week and has a lesson to come after it.
 *
 */
export interface ComesLater {
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  day: Day;
}
/**
 * An answer as kept.
 *
 */
export interface Consent {
  id: ConsentId;
  /**
   * Whose.
   */
  student: StudentId | null;
  /**
   * The guest.
   */
  guest: string | null;
  kind: ConsentKind;
  /**
   * Whether it was given.
   */
  given: boolean;
  /**
   * Who answered.
   */
  name: string;
  relation: Speaks;
  /**
   * What the guardian is to the student.
   */
  as_what: string;
  day: Day;
  how: OnWhat;
  /**
   * The paper.
   */
  scan: ScanNamed | null;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * The day it was withdrawn.
   */
  withdrawn: Day | null;
  /**
   * Who withdrew it.
   */
  by_whom: string;
}
/**
 * How one question stands.
 *
 */
export interface ConsentAsked {
  kind: ConsentKind;
  /**
   * Its name.
   */
  words: string;
  /**
   * What is asked.
   */
  question: string;
  /**
   * The newest answer; `None` while not asked.
   */
  answer: Consent | null;
  /**
   * Whether it is given and holds today.
   */
  holds: boolean;
  /**
   * Where it stands, in words.
   */
  stands: string;
  /**
   * What follows from a no, or from its being withdrawn; empty while it holds.
   */
  follows: string;
}
/**
 * A guardian or payer.
 *
 */
export interface Contact {
  /**
   * Full name.
   */
  name: string;
  /**
   * As in mother, club, employer.
   */
  relation: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * Telephone number, as dialled.
   */
  phone: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * A guardian's birth date as YYYY-MM-DD; empty while not told.
   */
  born: string;
}
/**
 * A guardian or payer.
 *
 */
export interface ContactInput {
  /**
   * Full name.
   */
  name?: string;
  /**
   * As in mother, club, employer.
   */
  relation?: string;
  /**
   * E-mail address.
   */
  email?: string;
  /**
   * Telephone number, as dialled.
   */
  phone?: string;
  /**
   * Postal address, several lines.
   */
  address?: string;
  /**
   * A guardian's birth date as YYYY-MM-DD; empty while not told.
   */
  born?: string;
}
/**
 * A cost as kept.
 *
 */
export interface Cost {
  id: CostId;
  kind: CostKind;
  day: Day;
  last: Day;
  /**
   * What it was.
   */
  words: string;
  /**
   * The town.
   */
  town: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  /**
   * Its currency.
   */
  currency: string;
  /**
   * The tax contained in it, a decimal; empty while not known.
   */
  tax: string;
  /**
   * How far, for a drive.
   */
  distance: string;
  /**
   * Miles or kilometres, for a drive.
   */
  unit: Per | null;
  /**
   * How the amount was worked out, with rate and source; empty for an amount as typed.
   */
  worked: string;
  /**
   * The receipt.
   */
  receipt: ScanNamed | null;
  /**
   * The day it was taken back.
   */
  taken_back: Day | null;
  /**
   * Why it was taken back.
   */
  why: string;
  /**
   * To whom it was passed on, and how much.
   */
  passed: CostShare[];
  /**
   * All of that, a decimal; empty for nothing.
   */
  passed_on: string;
}
/**
 * A part of a cost on an invoice.
 *
 */
export interface CostShare {
  payer: PayerId;
  /**
   * The name.
   */
  name: string;
  invoice: InvoiceId;
  /**
   * Its number; empty while a draft.
   */
  number: string;
  line: InvoiceLineId;
  /**
   * The words of the line.
   */
  words: string;
  /**
   * How much, as it stands there less what was credited, a decimal.
   */
  amount: string;
}
/**
 * A cost as typed.
 *
 */
export interface CostForm {
  kind: CostKind;
  /**
   * The day, or the first of several, as YYYY-MM-DD.
   */
  day: string;
  /**
   * The last day, for lodging and day rates; empty for one day.
   */
  last?: string;
  /**
   * What it was, where, and for which purpose.
   */
  words: string;
  /**
   * The town.
   */
  town?: string;
  /**
   * The amount, a decimal; worked out for drives and day rates.
   */
  amount?: string;
  /**
   * Its currency, an ISO 4217 code; that of the rate for drives and day rates.
   */
  currency?: string;
  /**
   * The tax contained in the amount, a decimal; empty while not known.
   */
  tax?: string;
  /**
   * How far, for a drive: a decimal number.
   */
  distance?: string;
  /**
   * Miles or kilometres, for a drive.
   */
  unit?: Per | null;
}
/**
 * What costs of one kind come to.
 *
 */
export interface CostKindSum {
  kind: CostKind;
  /**
   * Their sum, a decimal.
   */
  amount: string;
}
/**
 * What costs of one month come to.
 *
 */
export interface CostMonth {
  month: Day;
  /**
   * Their sum, a decimal.
   */
  amount: string;
}
/**
 * A rate as kept.
 *
 */
export interface CostRate {
  id: RateId;
  per: Per;
  since: Day;
  /**
   * The last day it holds; `None` while its end is not known.
   */
  until: Day | null;
  /**
   * Its currency.
   */
  currency: string;
  /**
   * The amount for one.
   */
  amount: string;
  /**
   * What part of it the first and the last day count for, in percent; empty for the whole.
   */
  edge: string;
  /**
   * Who says so.
   */
  source: string;
}
/**
 * What of a cost falls on a student.
 *
 */
export interface CostSplitShare {
  cost: CostId;
  student: StudentId;
  /**
   * How much, a decimal.
   */
  amount: string;
  /**
   * The currency.
   */
  currency: string;
  /**
   * The line, in words.
   */
  words: string;
}
/**
 * Someone who is there on the days.
 *
 */
export interface CostSplitStudent {
  student: StudentId;
  /**
   * The name.
   */
  name: string;
  /**
   * Who would pay.
   */
  paid_by: string;
  /**
   * Lessons on these days, those called off or missed left out.
   */
  lessons: number;
  /**
   * Whether a share falls on them.
   */
  chosen: boolean;
  /**
   * What would fall on them, one amount for each currency.
   */
  amounts: string[];
}
/**
 * Sums in one currency.
 *
 */
export interface CostSum {
  /**
   * The currency.
   */
  currency: string;
  /**
   * All of it, a decimal.
   */
  amount: string;
  /**
   * By kind.
   */
  kinds: CostKindSum[];
  /**
   * By the month in which each cost began.
   */
  months: CostMonth[];
}
/**
 * A rate to add.
 *
 */
export interface CostsAddRateInput {
  rate: RateForm;
}
/**
 * A rate as typed.
 *
 */
export interface RateForm {
  /**
   * For one of what.
   */
  per?: Per | null;
  /**
   * The first day it holds, as YYYY-MM-DD.
   */
  since: string;
  /**
   * The last day it holds; empty while its end is not known.
   */
  until?: string;
  /**
   * Its currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * The amount for one, a decimal with at most four places.
   */
  amount: string;
  /**
   * What part of it the first and the last day away count for, in percent; empty for the whole.
   */
  edge?: string;
  /**
   * Who says so: the law, the notice, the agreement.
   */
  source: string;
}
/**
 * A cost to change.
 *
 */
export interface CostsChangeInput {
  id: CostId;
  cost: CostForm;
  /**
   * A new receipt; left out to keep the one there is.
   */
  receipt?: ScanGiven | null;
}
/**
 * A cost as kept.
 *
 */
export interface CostsChangeOutput {
  id: CostId;
  kind: CostKind;
  day: Day;
  last: Day;
  /**
   * What it was.
   */
  words: string;
  /**
   * The town.
   */
  town: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  /**
   * Its currency.
   */
  currency: string;
  /**
   * The tax contained in it, a decimal; empty while not known.
   */
  tax: string;
  /**
   * How far, for a drive.
   */
  distance: string;
  /**
   * Miles or kilometres, for a drive.
   */
  unit: Per | null;
  /**
   * How the amount was worked out, with rate and source; empty for an amount as typed.
   */
  worked: string;
  /**
   * The receipt.
   */
  receipt: ScanNamed | null;
  /**
   * The day it was taken back.
   */
  taken_back: Day | null;
  /**
   * Why it was taken back.
   */
  why: string;
  /**
   * To whom it was passed on, and how much.
   */
  passed: CostShare[];
  /**
   * All of that, a decimal; empty for nothing.
   */
  passed_on: string;
}
/**
 * Costs of which days.
 *
 */
export interface CostsListInput {
  first: Day;
  last: Day;
}
/**
 * Costs and their sums.
 *
 */
export interface CostsListOutput {
  /**
   * The costs, the newest first, those taken back among them.
   */
  costs: Cost[];
  /**
   * Sums by currency, without those taken back.
   */
  sums: CostSum[];
}
/**
 * A cost to note.
 *
 */
export interface CostsNoteInput {
  cost: CostForm;
  /**
   * Its receipt.
   */
  receipt?: ScanGiven | null;
}
/**
 * A cost as kept.
 *
 */
export interface CostsNoteOutput {
  id: CostId;
  kind: CostKind;
  day: Day;
  last: Day;
  /**
   * What it was.
   */
  words: string;
  /**
   * The town.
   */
  town: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  /**
   * Its currency.
   */
  currency: string;
  /**
   * The tax contained in it, a decimal; empty while not known.
   */
  tax: string;
  /**
   * How far, for a drive.
   */
  distance: string;
  /**
   * Miles or kilometres, for a drive.
   */
  unit: Per | null;
  /**
   * How the amount was worked out, with rate and source; empty for an amount as typed.
   */
  worked: string;
  /**
   * The receipt.
   */
  receipt: ScanNamed | null;
  /**
   * The day it was taken back.
   */
  taken_back: Day | null;
  /**
   * Why it was taken back.
   */
  why: string;
  /**
   * To whom it was passed on, and how much.
   */
  passed: CostShare[];
  /**
   * All of that, a decimal; empty for nothing.
   */
  passed_on: string;
}
/**
 * Costs to pass on.
 *
 */
export interface CostsPassOnInput {
  /**
   * Which costs: what is left of each.
   */
  costs: CostId[];
  /**
   * The first of the days whose students share them; left out for that of the costs.
   */
  first?: Day | null;
  /**
   * The last of these days; left out for that of the costs.
   */
  last?: Day | null;
  by?: CostSplitBy;
  /**
   * Over whom; left out for everyone who is there on these days.
   */
  students?: StudentId[] | null;
}
/**
 * Costs that were passed on.
 *
 */
export interface CostsPassOnOutput {
  /**
   * The costs, each with its shares.
   */
  costs: Cost[];
  /**
   * What was done, as a sentence.
   */
  words: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface CostsPublishedInput {}
/**
 * A list of published rates, as offered.
 *
 */
export interface PublishedRates {
  /**
   * Its name, to take it over.
   */
  list: string;
  /**
   * What it is.
   */
  about: string;
  /**
   * Its rates, a line each.
   */
  lines: string[];
}
/**
 * Which rate.
 *
 */
export interface CostsPutRateAwayInput {
  rate: RateId;
}
/**
 * An input with nothing in it.
 *
 */
export interface CostsRatesInput {}
/**
 * Costs to pass on.
 *
 */
export interface CostsSplitProposalInput {
  /**
   * Which costs: what is left of each.
   */
  costs: CostId[];
  /**
   * The first of the days whose students share them; left out for that of the costs.
   */
  first?: Day | null;
  /**
   * The last of these days; left out for that of the costs.
   */
  last?: Day | null;
  by?: CostSplitBy;
  /**
   * Over whom; left out for everyone who is there on these days.
   */
  students?: StudentId[] | null;
}
/**
 * How costs would be passed on.
 *
 */
export interface CostsSplitProposalOutput {
  days: Span;
  /**
   * Everyone who is there then, by name.
   */
  students: CostSplitStudent[];
  /**
   * Each share.
   */
  shares: CostSplitShare[];
  /**
   * What would be passed on, one amount for each currency.
   */
  sums: string[];
}
/**
 * A run of days, both ends included.
 *
 */
export interface Span {
  first: Day;
  last: Day;
}
/**
 * A cost that was none.
 *
 */
export interface CostsTakeBackInput {
  id: CostId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A cost as kept.
 *
 */
export interface CostsTakeBackOutput {
  id: CostId;
  kind: CostKind;
  day: Day;
  last: Day;
  /**
   * What it was.
   */
  words: string;
  /**
   * The town.
   */
  town: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  /**
   * Its currency.
   */
  currency: string;
  /**
   * The tax contained in it, a decimal; empty while not known.
   */
  tax: string;
  /**
   * How far, for a drive.
   */
  distance: string;
  /**
   * Miles or kilometres, for a drive.
   */
  unit: Per | null;
  /**
   * How the amount was worked out, with rate and source; empty for an amount as typed.
   */
  worked: string;
  /**
   * The receipt.
   */
  receipt: ScanNamed | null;
  /**
   * The day it was taken back.
   */
  taken_back: Day | null;
  /**
   * Why it was taken back.
   */
  why: string;
  /**
   * To whom it was passed on, and how much.
   */
  passed: CostShare[];
  /**
   * All of that, a decimal; empty for nothing.
   */
  passed_on: string;
}
/**
 * A list to take over.
 *
 */
export interface CostsTakePublishedInput {
  /**
   * Its name.
   */
  list: string;
}
/**
 * A court.
 *
 */
export interface Court {
  id: CourtId;
  /**
   * Its name, as in "court 2".
   */
  name: string;
  /**
   * The coach's own notes.
   */
  notes: string;
  /**
   * Its kind, as rules of the facility name it: indoor, outdoor. Empty for none.
   */
  ground: string;
  /**
   * Whether it can be seen into from outside; left out while nobody looked.
   */
  seen: Seen | null;
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * What of a line is credited.
 *
 */
export interface CreditLine {
  line: InvoiceLineId;
  /**
   * How much, a decimal, with or without tax as the invoice\u{2019}s prices are; empty for all that is left.
   */
  amount?: string;
}
/**
 * When a goal is reached.
 *
 */
export interface Criterion {
  kind: CriterionKind;
  /**
   * How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
   */
  need: number;
  /**
   * Of how many tries; of a rate, 100; of `at_most`, in how many games running.
   */
  of: number;
  /**
   * Of a rate: the least number of chances.
   */
  least: number | null;
}
/**
 * A decision.
 *
 */
export interface Decision {
  id: DecisionId;
  /**
   * The visit at whose end it was taken; `None` between visits.
   */
  visit: VisitId | null;
  day: Day;
  kind: Choice;
  /**
   * Why.
   */
  reason: string;
  /**
   * For a raise: the new goal.
   */
  raised_to: GoalId | null;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskBackUpInput {}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskBackUpOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskCalendarTalkInput {}
/**
 * A talk with the server, and what came of it.
 *
 */
export interface DeskCalendarTalkOutput {
  stage: TalkStage;
  /**
   * The calendars it was asked for.
   */
  found: FoundCalendar[];
  /**
   * What an exchange did, as far as it got.
   */
  exchanged: Exchanged | null;
  /**
   * Whether it needs the password.
   */
  password: boolean;
  /**
   * What stood in its way; empty when nothing did.
   */
  trouble: string;
}
/**
 * A calendar found on the server.
 *
 */
export interface FoundCalendar {
  /**
   * Its path there.
   */
  href: string;
  /**
   * What it is called; its path where the server gives no name.
   */
  name: string;
  /**
   * Whether lessons may be written into it.
   */
  writable: boolean;
}
/**
 * What an exchange did.
 *
 */
export interface Exchanged {
  /**
   * So many lessons were written.
   */
  written: number;
  /**
   * So many were taken out.
   */
  removed: number;
  /**
   * So many calendars were read.
   */
  read: number;
  /**
   * Of so many lessons the server says something else.
   */
  differs: number;
  /**
   * What stood in the way of single calendars or lessons, a sentence each.
   */
  notes: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskCheckInput {}
/**
 * What a check found.
 *
 */
export interface DeskCheckOutput {
  /**
   * Nothing wrong was found.
   */
  sound: boolean;
  /**
   * SHA-256 of all rows: tables by name, rows by primary key, columns as declared.
   */
  content: string;
  /**
   * The schema the file has.
   */
  schema: number;
  /**
   * How many acts the journal holds.
   */
  acts: number;
  /**
   * How many rows were compared with their digests.
   */
  rows: number;
  /**
   * What is wrong, in words; empty when sound.
   */
  wrong: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskChooseInput {}
/**
 * A coach file as the desk names it.
 *
 */
export interface FileName {
  /**
   * Where it is.
   */
  path: string;
  /**
   * Its name without folder and ending.
   */
  name: string;
  /**
   * Whether it holds the invented sample season.
   */
  sample: boolean;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskCloseInput {}
/**
 * An input with nothing in it.
 *
 */
export interface DeskCloseOutput {}
/**
 * A new file by its name.
 *
 */
export interface DeskCreateInput {
  /**
   * Its name, without folder and ending.
   */
  name: string;
}
/**
 * A coach file as the desk names it.
 *
 */
export interface DeskCreateOutput {
  /**
   * Where it is.
   */
  path: string;
  /**
   * Its name without folder and ending.
   */
  name: string;
  /**
   * Whether it holds the invented sample season.
   */
  sample: boolean;
}
/**
 * An exchange to begin.
 *
 */
export interface DeskExchangeCalendarsInput {
  /**
   * The password; empty for the one typed or kept before.
   */
  password?: string;
}
/**
 * A talk with the server, and what came of it.
 *
 */
export interface DeskExchangeCalendarsOutput {
  stage: TalkStage;
  /**
   * The calendars it was asked for.
   */
  found: FoundCalendar[];
  /**
   * What an exchange did, as far as it got.
   */
  exchanged: Exchanged | null;
  /**
   * Whether it needs the password.
   */
  password: boolean;
  /**
   * What stood in its way; empty when nothing did.
   */
  trouble: string;
}
/**
 * Calendars to look for.
 *
 */
export interface DeskFindCalendarsInput {
  /**
   * Where: an address of the server, or of a calendar.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user?: string;
  /**
   * The password; empty for the one typed or kept before.
   */
  password?: string;
  /**
   * Whether to keep it in this machine's keychain.
   */
  keep?: boolean;
}
/**
 * A talk with the server, and what came of it.
 *
 */
export interface DeskFindCalendarsOutput {
  stage: TalkStage;
  /**
   * The calendars it was asked for.
   */
  found: FoundCalendar[];
  /**
   * What an exchange did, as far as it got.
   */
  exchanged: Exchanged | null;
  /**
   * Whether it needs the password.
   */
  password: boolean;
  /**
   * What stood in its way; empty when nothing did.
   */
  trouble: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskForgetMailInput {}
/**
 * An input with nothing in it.
 *
 */
export interface DeskForgetMailOutput {}
/**
 * An input with nothing in it.
 *
 */
export interface DeskKeychainInput {}
/**
 * Whether this machine keeps passwords.
 *
 */
export interface DeskKeychainOutput {
  /**
   * Whether it does.
   */
  ready: boolean;
  /**
   * If not, why, as a sentence.
   */
  words: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskLeaveCalendarsInput {}
/**
 * The server as it is set up, and how far the two sides are apart.
 *
 */
export interface DeskLeaveCalendarsOutput {
  /**
   * Where the calendars are; empty before a server was chosen.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user: string;
  /**
   * Its calendars that are made use of.
   */
  calendars: OwnCalendar[];
  /**
   * So many lessons are not on the server as they stand here.
   */
  to_write: number;
  /**
   * Lessons of which the server says something else.
   */
  differs: Difference[];
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskLookInput {}
/**
 * What lies on the desk.
 *
 */
export interface DeskLookOutput {
  /**
   * The file that is open.
   */
  open: FileName | null;
  /**
   * Files that were open before and are still there, newest first.
   */
  recent: FileName[];
  /**
   * The folder new files go to.
   */
  folder: string;
  /**
   * The program's version.
   */
  version: string;
  today: Day;
  /**
   * The machine's own zone, as a first guess for a new facility.
   */
  zone: string;
}
/**
 * A calendar to make on the server.
 *
 */
export interface DeskMakeCalendarInput {
  /**
   * Where.
   */
  address: string;
  /**
   * The name the coach signs in with.
   */
  user?: string;
  /**
   * What it is to be called.
   */
  name: string;
}
/**
 * A talk with the server, and what came of it.
 *
 */
export interface DeskMakeCalendarOutput {
  stage: TalkStage;
  /**
   * The calendars it was asked for.
   */
  found: FoundCalendar[];
  /**
   * What an exchange did, as far as it got.
   */
  exchanged: Exchanged | null;
  /**
   * Whether it needs the password.
   */
  password: boolean;
  /**
   * What stood in its way; empty when nothing did.
   */
  trouble: string;
}
/**
 * Which lesson.
 *
 */
export interface DeskOpenCardInput {
  lesson: LessonId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskOpenCardOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Which visit's plan.
 *
 */
export interface DeskOpenHomePlanInput {
  visit: VisitId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskOpenHomePlanOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * A file by its path.
 *
 */
export interface DeskOpenInput {
  /**
   * Where it is.
   */
  path: string;
}
/**
 * An issued letter.
 *
 */
export interface DeskOpenLetterInput {
  letter: LetterId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskOpenLetterOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskOpenMoneyPaperOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * A coach file as the desk names it.
 *
 */
export interface DeskOpenOutput {
  /**
   * Where it is.
   */
  path: string;
  /**
   * Its name without folder and ending.
   */
  name: string;
  /**
   * Whether it holds the invented sample season.
   */
  sample: boolean;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskOpenSheetOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * A name to look for.
 *
 */
export interface DeskPapersInput {
  /**
   * The student's full name.
   */
  name: string;
}
/**
 * Documents that were found.
 *
 */
export interface DeskPapersOutput {
  /**
   * Their paths.
   */
  paths: string[];
}
/**
 * A calendar file to choose and read.
 *
 */
export interface DeskReadCalendarInput {
  /**
   * The calendar it takes the place of; left out for a new one.
   */
  calendar?: CalendarId | null;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskRestoreInput {}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskRestoreOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskSampleInput {}
/**
 * A coach file as the desk names it.
 *
 */
export interface DeskSampleOutput {
  /**
   * Where it is.
   */
  path: string;
  /**
   * Its name without folder and ending.
   */
  name: string;
  /**
   * Whether it holds the invented sample season.
   */
  sample: boolean;
}
/**
 * Whose lessons.
 *
 */
export interface DeskSaveCalendarInput {
  /**
   * Of one student; left out for everyone's.
   */
  student?: StudentId | null;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveCalendarOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Which lesson.
 *
 */
export interface DeskSaveCardInput {
  lesson: LessonId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveCardOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Costs of which days.
 *
 */
export interface DeskSaveCostsInput {
  first: Day;
  last: Day;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveCostsOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Which student.
 *
 */
export interface DeskSaveEverythingInput {
  student: StudentId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveEverythingOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Which visit's plan.
 *
 */
export interface DeskSaveHomePlanInput {
  visit: VisitId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveHomePlanOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * An issued letter.
 *
 */
export interface DeskSaveLetterInput {
  letter: LetterId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveLetterOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Which message.
 *
 */
export interface DeskSaveMessageInput {
  message: MessageId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveMessageOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * A part of a message.
 *
 */
export interface DeskSaveMessagePartInput {
  message: MessageId;
  /**
   * Which part, from 0.
   */
  place: number;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveMessagePartOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveMoneyPaperOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * For whom.
 *
 */
export interface DeskSavePageInput {
  student: StudentId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSavePageOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskSaveSheetOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * Handing over to begin.
 *
 */
export interface DeskSendInput {
  /**
   * The password; empty for the one typed or kept before.
   */
  password?: string;
  /**
   * Whether to keep it in this machine\u{2019}s keychain.
   */
  keep?: boolean;
}
/**
 * Handing over, as it is shown.
 *
 */
export interface DeskSendOutput {
  stage: SendingStage;
  /**
   * How many messages were seen to in this run.
   */
  done: number;
  /**
   * How many are left.
   */
  left: number;
  /**
   * When the next try is, while it pauses.
   */
  next: Instant | null;
  /**
   * Whether the password is needed.
   */
  password: boolean;
  /**
   * What stands in the way, as sentences; empty for nothing.
   */
  trouble: string;
}
/**
 * Handing over to begin.
 *
 */
export interface DeskSendTrialInput {
  /**
   * The password; empty for the one typed or kept before.
   */
  password?: string;
  /**
   * Whether to keep it in this machine\u{2019}s keychain.
   */
  keep?: boolean;
}
/**
 * Handing over, as it is shown.
 *
 */
export interface DeskSendTrialOutput {
  stage: SendingStage;
  /**
   * How many messages were seen to in this run.
   */
  done: number;
  /**
   * How many are left.
   */
  left: number;
  /**
   * When the next try is, while it pauses.
   */
  next: Instant | null;
  /**
   * Whether the password is needed.
   */
  password: boolean;
  /**
   * What stands in the way, as sentences; empty for nothing.
   */
  trouble: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskSendingInput {}
/**
 * Handing over, as it is shown.
 *
 */
export interface DeskSendingOutput {
  stage: SendingStage;
  /**
   * How many messages were seen to in this run.
   */
  done: number;
  /**
   * How many are left.
   */
  left: number;
  /**
   * When the next try is, while it pauses.
   */
  next: Instant | null;
  /**
   * Whether the password is needed.
   */
  password: boolean;
  /**
   * What stands in the way, as sentences; empty for nothing.
   */
  trouble: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskStopCalendarTalkInput {}
/**
 * A talk with the server, and what came of it.
 *
 */
export interface DeskStopCalendarTalkOutput {
  stage: TalkStage;
  /**
   * The calendars it was asked for.
   */
  found: FoundCalendar[];
  /**
   * What an exchange did, as far as it got.
   */
  exchanged: Exchanged | null;
  /**
   * Whether it needs the password.
   */
  password: boolean;
  /**
   * What stood in its way; empty when nothing did.
   */
  trouble: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface DeskStopSendingInput {}
/**
 * Handing over, as it is shown.
 *
 */
export interface DeskStopSendingOutput {
  stage: SendingStage;
  /**
   * How many messages were seen to in this run.
   */
  done: number;
  /**
   * How many are left.
   */
  left: number;
  /**
   * When the next try is, while it pauses.
   */
  next: Instant | null;
  /**
   * Whether the password is needed.
   */
  password: boolean;
  /**
   * What stands in the way, as sentences; empty for nothing.
   */
  trouble: string;
}
/**
 * Which visit.
 *
 */
export interface DeskWriteInvitationsInput {
  visit: VisitId;
}
/**
 * Where something was saved; nothing when the coach thought better of it.
 *
 */
export interface DeskWriteInvitationsOutput {
  /**
   * The path.
   */
  path: string | null;
}
/**
 * A division or a level as an association names it.
 *
 */
export interface Division {
  /**
   * The list it belongs to, such as `NTRP`.
   */
  list: string;
  /**
   * Its name in that list.
   */
  name: string;
  /**
   * What is seen at it, in our own short words; empty where the list was not read that far.
   */
  words: string;
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * A part in which an invoice is to be paid, as printed.
 *
 */
export interface DocPart {
  day: Day;
  /**
   * How much, a decimal in the document's currency.
   */
  amount: string;
}
/**
 * Tax of one category and rate. Amounts are decimals in the document's currency.
 *
 */
export interface DocTax {
  category: Category;
  /**
   * The rate in percent.
   */
  rate: string;
  /**
   * Why no tax is charged.
   */
  why: string;
  /**
   * What is taxed, without the tax.
   */
  base: string;
  /**
   * The tax.
   */
  amount: string;
}
/**
 * A document of the person: a letter as it was issued, or whatever else is kept as bytes.
 *
 */
export interface Document {
  /**
   * The table it is in.
   */
  table: string;
  /**
   * Its row.
   */
  id: string;
  /**
   * Its column.
   */
  column: string;
}
/**
 * Something to do on court that serves one or more skills.
 *
 */
export interface Drill {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
  /**
   * What it is for.
   */
  purpose: string;
  /**
   * Who stands where, who feeds what, what is a target.
   */
  layout: string;
  /**
   * How it is made harder, line by line.
   */
  progression: Progress[];
  /**
   * The ids of the skills it serves.
   */
  skills: string[];
  /**
   * The lowest and the highest level it suits, 0 to 4.
   */
  levels: number[];
  /**
   * How long it takes, in minutes.
   */
  minutes: number;
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * A harder form of a drill.
 *
 */
export interface Progress {
  /**
   * What changes.
   */
  words: string;
  /**
   * The id of the drill this leads to, where it leads to another one.
   */
  drill?: string | null;
}
/**
 * A drill to choose.
 *
 */
export interface DrillLine {
  /**
   * Its id in the pack, or of the coach's own.
   */
  id: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * What it is for.
   */
  purpose: string;
  /**
   * Who stands where, who feeds what.
   */
  layout: string;
  /**
   * How it is made harder, easiest first.
   */
  steps: string[];
  /**
   * The skills it serves.
   */
  skills: string[];
  /**
   * How long it usually takes, where the pack says.
   */
  minutes: number | null;
  /**
   * Whether it is the coach's own.
   */
  own: boolean;
}
/**
 * Something whose time is over, or will be.
 *
 */
export interface Due {
  kept: Kept;
  /**
   * Whose.
   */
  student: StudentId | null;
  /**
   * The report, if it is one.
   */
  incident: IncidentId | null;
  /**
   * The person's name.
   */
  name: string;
  until: Day;
  /**
   * Why until then, as a sentence.
   */
  why: string;
}
/**
 * Whom to call.
 *
 */
export interface EmergencyContact {
  /**
   * Full name.
   */
  name: string;
  /**
   * What they are to the student.
   */
  relation: string;
  /**
   * Telephone number, as dialled.
   */
  phone: string;
  /**
   * A second number.
   */
  other: string;
}
/**
 * Whom to call.
 *
 */
export interface EmergencyContactInput {
  /**
   * Full name.
   */
  name?: string;
  /**
   * What they are to the student.
   */
  relation?: string;
  /**
   * Telephone number, as dialled.
   */
  phone?: string;
  /**
   * A second number.
   */
  other?: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface ErasingBackupsInput {}
/**
 * The copies the program knows of.
 *
 */
export interface ErasingBackupsOutput {
  /**
   * So many months they are kept.
   */
  months: number;
  /**
   * The oldest first.
   */
  backups: BackupKept[];
}
/**
 * How long the coach keeps backups.
 *
 */
export interface ErasingKeepBackupsForInput {
  /**
   * So many months.
   */
  months: number;
}
/**
 * The copies the program knows of.
 *
 */
export interface ErasingKeepBackupsForOutput {
  /**
   * So many months they are kept.
   */
  months: number;
  /**
   * The oldest first.
   */
  backups: BackupKept[];
}
/**
 * An input with nothing in it.
 *
 */
export interface ErasingKeptForAccountsInput {}
/**
 * One thing that was agreed or offered for money.
 *
 */
export interface KeptForAccounts {
  id: KeptId;
  /**
   * The name on the account.
   */
  name: string;
  /**
   * The postal address, where one was known.
   */
  address: string;
  day: Day;
  /**
   * What was to be paid for.
   */
  what: PaidFor[];
  /**
   * The whole price, as in "174.00 EUR"; empty when a part of it was not known.
   */
  price: string;
  state: OfferState;
  until: Day;
  /**
   * Why, in the coach's words.
   */
  reason: string;
}
/**
 * A lesson that was to be paid for.
 *
 */
export interface PaidFor {
  day: Day;
  starts: Time;
  ends: Time;
  /**
   * The facility.
   */
  place: string;
  /**
   * The court, or empty.
   */
  court: string;
  /**
   * What the lesson cost, as in "40.00 EUR".
   */
  fee: string;
  /**
   * What the court cost.
   */
  court_cost: string;
}
/**
 * Which of them.
 *
 */
export interface ErasingLetGoInput {
  kept: KeptId;
}
/**
 * One of them is gone.
 *
 */
export interface ErasingLetGoOutput {
  /**
   * What was done, as a sentence.
   */
  words: string;
}
/**
 * A file to look at.
 *
 */
export interface ExchangeReadCsvInput {
  /**
   * The file's bytes, in base64.
   */
  content: string;
  /**
   * Which column is what; left out for the program's proposal.
   */
  columns?: Columns | null;
  dates?: DateOrder;
}
/**
 * What a file holds.
 *
 */
export interface ExchangeReadCsvOutput {
  /**
   * The words above the columns.
   */
  head: string[];
  /**
   * The first rows, as they stand.
   */
  first_rows: string[][];
  /**
   * How many rows there are.
   */
  rows: number;
  columns: Columns;
  /**
   * What is wrong with that choice; then there is no preview.
   */
  column_problems: ColumnProblem[];
  /**
   * What would be taken, and what not and why.
   */
  preview: Preview | null;
  /**
   * Who is in the coach file already.
   */
  known: Known[];
  /**
   * Names that may be the same person's, though written differently.
   */
  near: NearName[];
}
/**
 * What taking the file in would bring.
 *
 */
export interface Preview {
  dates: DateEvidence;
  /**
   * The rows that can be taken.
   */
  rows: SeasonRow[];
  /**
   * Why the others cannot.
   */
  not_taken: NotTaken[];
  /**
   * What to look at first.
   */
  flags: Flag[];
  /**
   * The students of the rows taken.
   */
  students: StudentSeen[];
  /**
   * How many visits the rows taken make: one student, one first day.
   */
  visits: number;
  /**
   * How many blocks the rows taken make: one a row.
   */
  blocks: number;
  /**
   * How many rows are not taken.
   */
  rows_not_taken: number;
}
/**
 * A row that was taken.
 *
 */
export interface SeasonRow {
  /**
   * The line of the file.
   */
  line: number;
  /**
   * The student, as first written in the file, given name first.
   */
  student: string;
  /**
   * What the spellings of one name have in common.
   */
  student_key: string;
  /**
   * The student's mail address.
   */
  email: string | null;
  /**
   * The first day of the visit.
   */
  arrive: string;
  /**
   * The last day of the visit; the first day where the file says nothing.
   */
  depart: string;
  /**
   * The town or facility.
   */
  place: string | null;
  /**
   * What was worked on.
   */
  goal: string;
  /**
   * The cue.
   */
  cue: string | null;
  /**
   * Fed, live, set game or match.
   */
  condition: Condition | null;
  /**
   * The criterion.
   */
  criterion: Count | null;
  kind: CsvKind;
  count: Count;
  /**
   * A note.
   */
  note: string | null;
}
/**
 * One reason why a row was not taken. A row can have several.
 *
 */
export interface NotTaken {
  /**
   * The line of the file.
   */
  line: number;
  /**
   * The name of the column, or nothing where the whole row is meant.
   */
  column: string | null;
  /**
   * The kind of reason.
   */
  code: string;
  /**
   * The reason and what to do, for a person.
   */
  words: string;
}
/**
 * Something to look at, although the rows were taken.
 *
 */
export interface Flag {
  /**
   * `emails_differ`, `depart_differs`, `visits_overlap` or `row_twice`.
   */
  code: string;
  /**
   * The lines it concerns.
   */
  lines: number[];
  /**
   * What to look at, for a person.
   */
  words: string;
}
/**
 * A student found in the file.
 *
 */
export interface StudentSeen {
  /**
   * What the spellings have in common.
   */
  key: string;
  /**
   * The name as first written, given name first.
   */
  name: string;
  /**
   * Every spelling found, given name first.
   */
  spellings: string[];
  /**
   * The first mail address found.
   */
  email: string | null;
  /**
   * How many rows were taken for this student.
   */
  rows: number;
  /**
   * The line of the first of them.
   */
  line: number;
}
/**
 * A person in the file who is in the coach file already.
 *
 */
export interface Known {
  /**
   * The name's key in the preview.
   */
  key: string;
  student: StudentId;
  /**
   * The name in the coach file.
   */
  name: string;
}
/**
 * A name in the file that is one letter away from another: perhaps one person, and the coach says.
 *
 */
export interface NearName {
  /**
   * The name's key.
   */
  key: string;
  /**
   * The name, as the file has it.
   */
  name: string;
  /**
   * The line it is first on.
   */
  line: number;
  /**
   * The other name's key.
   */
  other_key: string;
  /**
   * The other name.
   */
  other: string;
  /**
   * The line the other is first on; nothing when it is a student of the coach file.
   */
  other_line: number | null;
}
/**
 * A season to take.
 *
 */
export interface ExchangeTakeCsvInput {
  /**
   * The file's bytes, in base64.
   */
  content: string;
  columns: Columns;
  dates?: DateOrder;
  facility: FacilityId;
  /**
   * People who are the same though written differently: each name (or its key) becomes the other.
   */
  same?: {
    [k: string]: string;
  };
}
/**
 * What was taken.
 *
 */
export interface ExchangeTakeCsvOutput {
  /**
   * Students added.
   */
  students_added: number;
  /**
   * Students who were here already.
   */
  students_known: number;
  /**
   * Visits added.
   */
  visits: number;
  /**
   * Goals added.
   */
  goals: number;
  /**
   * Counts added.
   */
  blocks: number;
  /**
   * The lines of the file that were taken.
   */
  lines: number[];
  /**
   * What was not taken, and why.
   */
  not_taken: NotTaken[];
  /**
   * What was understood in a way worth knowing.
   */
  notes: string[];
}
/**
 * A cost that is expected, as typed.
 *
 */
export interface ExpectedCost {
  kind: CostKind;
  /**
   * What it would be, in words; empty for its kind.
   */
  words?: string;
  /**
   * Its day, or the first of a day rate, as YYYY-MM-DD; empty for the first of the days asked about.
   */
  day?: string;
  /**
   * The last day of a day rate; empty for the last of the days asked about.
   */
  last?: string;
  /**
   * The amount, of lodging for one night, a decimal; worked out for drives and day rates.
   */
  amount?: string;
  /**
   * Its currency, an ISO 4217 code; that of the rate for drives and day rates.
   */
  currency?: string;
  /**
   * So many nights of lodging; empty for one.
   */
  nights?: string;
  /**
   * How far, for a drive: a decimal number.
   */
  distance?: string;
  /**
   * Miles or kilometres, for a drive.
   */
  unit?: Per | null;
}
/**
 * A new last day.
 *
 */
export interface Extension {
  until: Day;
  /**
   * Why.
   */
  reason: string;
  day: Day;
}
/**
 * What is taken off the whole or put on it, as typed.
 *
 */
export interface ExtraForm {
  /**
   * Whether it is taken off; otherwise it is put on.
   */
  takes_off: boolean;
  /**
   * Why, as it is to stand there.
   */
  words: string;
  /**
   * How much, a decimal, without or with tax as the prices are.
   */
  amount: string;
  /**
   * The tax; left out for that of the lines, where all have the same.
   */
  tax?: LineTax | null;
}
/**
 * The tax of a line, as typed.
 *
 */
export interface LineTax {
  category: Category;
  /**
   * The rate in percent; empty for 0.
   */
  rate?: string;
  /**
   * Why no tax is charged.
   */
  why?: string;
}
/**
 * A standard that may be printed on eyewear.
 *
 */
export interface EyewearStandard {
  /**
   * Its name, as printed.
   */
  name: string;
  /**
   * Its edition.
   */
  edition: string;
  /**
   * What it is for.
   */
  about: string;
}
/**
 * A new court.
 *
 */
export interface FacilitiesAddCourtInput {
  facility: FacilityId;
  /**
   * Its name.
   */
  name: string;
  /**
   * The coach's own notes.
   */
  notes?: string;
  /**
   * Its kind, as rules of the facility name it: indoor, outdoor.
   */
  ground?: string;
  /**
   * Whether it can be seen into from outside.
   */
  seen?: Seen | null;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesAddCourtOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * What is kept about a facility; the form and the record are the same.
 *
 */
export interface Place {
  /**
   * Its name.
   */
  name: string;
  /**
   * The town.
   */
  town: string;
  /**
   * IANA zone.
   */
  zone: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The coach's own notes: desk, parking, who to ask.
   */
  notes: string;
  /**
   * What it asks of visitors, as the coach tells them: entrance, guest fee, rules.
   */
  visitors: string;
}
/**
 * What is kept about a facility; the form and the record are the same.
 *
 */
export interface FacilitiesAddInput {
  /**
   * Its name.
   */
  name?: string;
  /**
   * The town.
   */
  town?: string;
  /**
   * IANA zone.
   */
  zone?: string;
  /**
   * Postal address, several lines.
   */
  address?: string;
  /**
   * The coach's own notes: desk, parking, who to ask.
   */
  notes?: string;
  /**
   * What it asks of visitors, as the coach tells them: entrance, guest fee, rules.
   */
  visitors?: string;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesAddOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which court.
 *
 */
export interface FacilitiesArchiveCourtInput {
  court: CourtId;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesArchiveCourtOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which facility.
 *
 */
export interface FacilitiesArchiveInput {
  facility: FacilityId;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesArchiveOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which facility.
 *
 */
export interface FacilitiesBringBackInput {
  facility: FacilityId;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesBringBackOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which facility.
 *
 */
export interface FacilitiesCardInput {
  facility: FacilityId;
}
/**
 * Whom to ask, and where to turn; the form and the record are the same.
 *
 */
export interface FacilitiesCardOutput {
  /**
   * Who is at the desk.
   */
  desk: string;
  /**
   * The desk's telephone.
   */
  desk_phone: string;
  /**
   * The desk's e-mail address.
   */
  desk_email: string;
  /**
   * The exact address and entrance, as told to an ambulance.
   */
  entrance: string;
  /**
   * Where a telephone is, and the local emergency number.
   */
  phone: string;
  /**
   * Where the defibrillator is.
   */
  defibrillator: string;
  /**
   * Where first aid is.
   */
  first_aid: string;
  /**
   * The nearest hospital.
   */
  hospital: string;
  /**
   * The day the coach looked, as YYYY-MM-DD.
   */
  seen: string;
}
/**
 * A changed court.
 *
 */
export interface FacilitiesChangeCourtInput {
  court: CourtId;
  /**
   * Its name.
   */
  name: string;
  /**
   * The coach's own notes.
   */
  notes?: string;
  /**
   * Its kind, as rules of the facility name it: indoor, outdoor.
   */
  ground?: string;
  /**
   * Whether it can be seen into from outside.
   */
  seen?: Seen | null;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesChangeCourtOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * A changed facility.
 *
 */
export interface FacilitiesChangeInput {
  facility: FacilityId;
  place: PlaceInput;
}
/**
 * What is kept about a facility; the form and the record are the same.
 *
 */
export interface PlaceInput {
  /**
   * Its name.
   */
  name?: string;
  /**
   * The town.
   */
  town?: string;
  /**
   * IANA zone.
   */
  zone?: string;
  /**
   * Postal address, several lines.
   */
  address?: string;
  /**
   * The coach's own notes: desk, parking, who to ask.
   */
  notes?: string;
  /**
   * What it asks of visitors, as the coach tells them: entrance, guest fee, rules.
   */
  visitors?: string;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesChangeOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * What to list.
 *
 */
export interface FacilitiesListInput {
  /**
   * Those put away as well, after the others.
   */
  archived?: boolean;
}
/**
 * A facility as stored.
 *
 */
export interface Facility {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which facility.
 *
 */
export interface FacilitiesRulesInput {
  facility: FacilityId;
}
/**
 * A facility's rules of booking; the form and the record are the same. 0 and an empty text mean
 * that the rule is not known or not made.
 *
 */
export interface FacilitiesRulesOutput {
  /**
   * The currency of its prices, an ISO 4217 code.
   */
  currency: string;
  /**
   * What the coach is there, as its rows name it: member, guest.
   */
  books_as: string;
  /**
   * When it is open.
   */
  hours: Hours[];
  /**
   * When it, or a court of it, cannot be booked.
   */
  closures: Closure[];
  /**
   * What an hour costs; the first row that fits.
   */
  rates: Rate[];
  /**
   * How long before it a court can be booked; the first row that fits.
   */
  ahead: Ahead[];
  /**
   * Until when a court can be given back.
   */
  release: Release[];
  /**
   * Bookings start on multiples of so many minutes after the hour.
   */
  grid: number;
  /**
   * The shortest booking, in minutes.
   */
  shortest: number;
  /**
   * The longest booking, in minutes.
   */
  longest: number;
  /**
   * The most minutes a day.
   */
  day_limit: number;
  /**
   * The most minutes in any seven days.
   */
  week_limit: number;
  /**
   * The most bookings a day.
   */
  day_bookings: number;
  /**
   * No two bookings in a row.
   */
  apart: boolean;
  /**
   * One booking is played before the next can be made.
   */
  one_by_one: boolean;
  /**
   * The most people on a court.
   */
  people: number;
  /**
   * What each booking costs besides, a decimal amount.
   */
  booking_fee: string;
  /**
   * What each guest costs, a decimal amount.
   */
  guest_fee: string;
  /**
   * So many minutes late, a court is lost.
   */
  grace: number;
  /**
   * A court that weather takes costs nothing.
   */
  weather_free: boolean;
  /**
   * The youngest who may book, in years.
   */
  youngest: number;
  /**
   * What everyone on court needs, as in eye protection.
   */
  needs: string;
  /**
   * Where these rules stand: a page, a notice, the desk.
   */
  source: string;
  /**
   * The day they were read there, as YYYY-MM-DD.
   */
  source_seen: string;
}
/**
 * When a facility is open.
 *
 */
export interface Hours {
  /**
   * On which days of the week, 1 for Monday to 7 for Sunday (ISO 8601); none for every day.
   */
  weekdays: number[];
  /**
   * From this time, HH:MM.
   */
  opens: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  closes: string;
  /**
   * In a season from this day; empty for always.
   */
  first: string;
  /**
   * In a season until this day.
   */
  last: string;
}
/**
 * What an hour costs.
 *
 */
export interface Rate {
  /**
   * For whom, as in member; empty for everyone.
   */
  who: string;
  /**
   * On which kind of court, as in outdoor; empty for every court.
   */
  ground: string;
  /**
   * On which days of the week; none for every day.
   */
  weekdays: number[];
  /**
   * From this time; empty for the whole day.
   */
  starts: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends: string;
  /**
   * The price of an hour, a decimal amount.
   */
  hour: string;
}
/**
 * Until when a court can be given back without this cost.
 *
 */
export interface Release {
  /**
   * On which kind of court; empty for every court.
   */
  ground: string;
  /**
   * Until so many hours before it begins, that moment included.
   */
  hours: number;
  counted: CountedBy;
  later: Later;
  /**
   * The fee, a decimal amount.
   */
  fee: string;
}
/**
 * A card to write.
 *
 */
export interface FacilitiesSetCardInput {
  facility: FacilityId;
  card: Card;
}
/**
 * Whom to ask, and where to turn; the form and the record are the same.
 *
 */
export interface FacilitiesSetCardOutput {
  /**
   * Who is at the desk.
   */
  desk: string;
  /**
   * The desk's telephone.
   */
  desk_phone: string;
  /**
   * The desk's e-mail address.
   */
  desk_email: string;
  /**
   * The exact address and entrance, as told to an ambulance.
   */
  entrance: string;
  /**
   * Where a telephone is, and the local emergency number.
   */
  phone: string;
  /**
   * Where the defibrillator is.
   */
  defibrillator: string;
  /**
   * Where first aid is.
   */
  first_aid: string;
  /**
   * The nearest hospital.
   */
  hospital: string;
  /**
   * The day the coach looked, as YYYY-MM-DD.
   */
  seen: string;
}
/**
 * Rules to write down.
 *
 */
export interface FacilitiesSetRulesInput {
  facility: FacilityId;
  rules: Rules;
}
/**
 * A facility's rules of booking; the form and the record are the same. 0 and an empty text mean
 * that the rule is not known or not made.
 *
 */
export interface Rules {
  /**
   * The currency of its prices, an ISO 4217 code.
   */
  currency?: string;
  /**
   * What the coach is there, as its rows name it: member, guest.
   */
  books_as?: string;
  /**
   * When it is open.
   */
  hours?: HoursInput[];
  /**
   * When it, or a court of it, cannot be booked.
   */
  closures?: ClosureInput[];
  /**
   * What an hour costs; the first row that fits.
   */
  rates?: RateInput[];
  /**
   * How long before it a court can be booked; the first row that fits.
   */
  ahead?: AheadInput[];
  /**
   * Until when a court can be given back.
   */
  release?: ReleaseInput[];
  /**
   * Bookings start on multiples of so many minutes after the hour.
   */
  grid?: number;
  /**
   * The shortest booking, in minutes.
   */
  shortest?: number;
  /**
   * The longest booking, in minutes.
   */
  longest?: number;
  /**
   * The most minutes a day.
   */
  day_limit?: number;
  /**
   * The most minutes in any seven days.
   */
  week_limit?: number;
  /**
   * The most bookings a day.
   */
  day_bookings?: number;
  /**
   * No two bookings in a row.
   */
  apart?: boolean;
  /**
   * One booking is played before the next can be made.
   */
  one_by_one?: boolean;
  /**
   * The most people on a court.
   */
  people?: number;
  /**
   * What each booking costs besides, a decimal amount.
   */
  booking_fee?: string;
  /**
   * What each guest costs, a decimal amount.
   */
  guest_fee?: string;
  /**
   * So many minutes late, a court is lost.
   */
  grace?: number;
  /**
   * A court that weather takes costs nothing.
   */
  weather_free?: boolean;
  /**
   * The youngest who may book, in years.
   */
  youngest?: number;
  /**
   * What everyone on court needs, as in eye protection.
   */
  needs?: string;
  /**
   * Where these rules stand: a page, a notice, the desk.
   */
  source?: string;
  /**
   * The day they were read there, as YYYY-MM-DD.
   */
  source_seen?: string;
}
/**
 * When a facility is open.
 *
 */
export interface HoursInput {
  /**
   * On which days of the week, 1 for Monday to 7 for Sunday (ISO 8601); none for every day.
   */
  weekdays?: number[];
  /**
   * From this time, HH:MM.
   */
  opens?: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  closes?: string;
  /**
   * In a season from this day; empty for always.
   */
  first?: string;
  /**
   * In a season until this day.
   */
  last?: string;
}
/**
 * What an hour costs.
 *
 */
export interface RateInput {
  /**
   * For whom, as in member; empty for everyone.
   */
  who?: string;
  /**
   * On which kind of court, as in outdoor; empty for every court.
   */
  ground?: string;
  /**
   * On which days of the week; none for every day.
   */
  weekdays?: number[];
  /**
   * From this time; empty for the whole day.
   */
  starts?: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends?: string;
  /**
   * The price of an hour, a decimal amount.
   */
  hour?: string;
}
/**
 * Until when a court can be given back without this cost.
 *
 */
export interface ReleaseInput {
  /**
   * On which kind of court; empty for every court.
   */
  ground?: string;
  /**
   * Until so many hours before it begins, that moment included.
   */
  hours?: number;
  counted?: CountedBy;
  later?: Later;
  /**
   * The fee, a decimal amount.
   */
  fee?: string;
}
/**
 * A facility's rules of booking; the form and the record are the same. 0 and an empty text mean
 * that the rule is not known or not made.
 *
 */
export interface FacilitiesSetRulesOutput {
  /**
   * The currency of its prices, an ISO 4217 code.
   */
  currency: string;
  /**
   * What the coach is there, as its rows name it: member, guest.
   */
  books_as: string;
  /**
   * When it is open.
   */
  hours: Hours[];
  /**
   * When it, or a court of it, cannot be booked.
   */
  closures: Closure[];
  /**
   * What an hour costs; the first row that fits.
   */
  rates: Rate[];
  /**
   * How long before it a court can be booked; the first row that fits.
   */
  ahead: Ahead[];
  /**
   * Until when a court can be given back.
   */
  release: Release[];
  /**
   * Bookings start on multiples of so many minutes after the hour.
   */
  grid: number;
  /**
   * The shortest booking, in minutes.
   */
  shortest: number;
  /**
   * The longest booking, in minutes.
   */
  longest: number;
  /**
   * The most minutes a day.
   */
  day_limit: number;
  /**
   * The most minutes in any seven days.
   */
  week_limit: number;
  /**
   * The most bookings a day.
   */
  day_bookings: number;
  /**
   * No two bookings in a row.
   */
  apart: boolean;
  /**
   * One booking is played before the next can be made.
   */
  one_by_one: boolean;
  /**
   * The most people on a court.
   */
  people: number;
  /**
   * What each booking costs besides, a decimal amount.
   */
  booking_fee: string;
  /**
   * What each guest costs, a decimal amount.
   */
  guest_fee: string;
  /**
   * So many minutes late, a court is lost.
   */
  grace: number;
  /**
   * A court that weather takes costs nothing.
   */
  weather_free: boolean;
  /**
   * The youngest who may book, in years.
   */
  youngest: number;
  /**
   * What everyone on court needs, as in eye protection.
   */
  needs: string;
  /**
   * Where these rules stand: a page, a notice, the desk.
   */
  source: string;
  /**
   * The day they were read there, as YYYY-MM-DD.
   */
  source_seen: string;
}
/**
 * Permission to write down.
 *
 */
export interface FacilitiesSetTeachingInput {
  facility: FacilityId;
  teaching: TeachingInput;
}
/**
 * Permission to teach; the form and the record are the same.
 *
 */
export interface TeachingInput {
  state?: Permission;
  /**
   * Who said so.
   */
  by_whom?: string;
  /**
   * The last day it holds, as YYYY-MM-DD; empty for without end.
   */
  until?: string;
  /**
   * What must be shown: an insurance certificate, a background check.
   */
  papers?: string;
  /**
   * The last day those papers hold.
   */
  papers_until?: string;
  /**
   * What else was said.
   */
  note?: string;
}
/**
 * Permission as it stands on a day.
 *
 */
export interface FacilitiesSetTeachingOutput {
  teaching: Teaching;
  /**
   * Whether anything is missing.
   */
  missing: boolean;
  /**
   * What stands or is missing, a sentence each.
   */
  words: string[];
}
/**
 * Permission to teach; the form and the record are the same.
 *
 */
export interface Teaching {
  state: Permission;
  /**
   * Who said so.
   */
  by_whom: string;
  /**
   * The last day it holds, as YYYY-MM-DD; empty for without end.
   */
  until: string;
  /**
   * What must be shown: an insurance certificate, a background check.
   */
  papers: string;
  /**
   * The last day those papers hold.
   */
  papers_until: string;
  /**
   * What else was said.
   */
  note: string;
}
/**
 * Which facility.
 *
 */
export interface FacilitiesShowInput {
  facility: FacilityId;
}
/**
 * A facility as stored.
 *
 */
export interface FacilitiesShowOutput {
  id: FacilityId;
  place: Place;
  /**
   * Its courts by name, those put away last.
   */
  courts: Court[];
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which facility.
 *
 */
export interface FacilitiesTeachingInput {
  facility: FacilityId;
}
/**
 * Permission as it stands on a day.
 *
 */
export interface FacilitiesTeachingOutput {
  teaching: Teaching;
  /**
   * Whether anything is missing.
   */
  missing: boolean;
  /**
   * What stands or is missing, a sentence each.
   */
  words: string[];
}
/**
 * A booking to ask the rules about.
 *
 */
export interface FacilitiesTermsInput {
  facility: FacilityId;
  /**
   * On which court; left out while it is not known.
   */
  court?: CourtId | null;
  day: Day;
  starts: Time;
  /**
   * Its length in minutes.
   */
  minutes: number;
}
/**
 * What the rules say.
 *
 */
export interface FacilitiesTermsOutput {
  /**
   * Each rule that speaks against it, as a sentence; none when nothing does.
   */
  against: string[];
  /**
   * From when it can be asked for; `None` when no rule says.
   */
  ask_from: Given | null;
  /**
   * The same as a sentence.
   */
  ask_words: string;
  /**
   * What it costs, as in "40.00 EUR"; empty when no rule says.
   */
  cost: string;
  /**
   * Until when it can be given back, and what it costs later: a sentence each, the first to pass
   * first.
   */
  release: string[];
  /**
   * The first of these, once its moment has passed; empty when there is none.
   */
  late_words: string;
  /**
   * The last moment at which it can be given back free.
   */
  free_until: Given | null;
  /**
   * What else to mind there, a sentence each.
   */
  mind: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface FacilitiesZonesInput {}
/**
 * A signed form as kept.
 *
 */
export interface FacilityForm {
  id: FormId;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  signed: Day;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * Where the signed form is.
   */
  kept: string;
  /**
   * A scan of it.
   */
  scan: ScanNamed | null;
}
/**
 * A short dated fact about a student.
 *
 */
export interface Fact {
  id: FactId;
  student: StudentId;
  kind: FactKind;
  day: Day;
  /**
   * The fact.
   */
  words: string;
}
/**
 * What a lesson of a length costs.
 *
 */
export interface Fee {
  /**
   * The length in minutes.
   */
  minutes: number;
  /**
   * The price, a decimal amount.
   */
  amount: string;
}
/**
 * How many of each. What was called off is not counted.
 *
 */
export interface Figures {
  /**
   * Visits that were started.
   */
  held: number;
  /**
   * Visits whose days are agreed and that were not started.
   */
  agreed: number;
  /**
   * Visits that are only expected.
   */
  expected: number;
  /**
   * Lessons given, those cut short among them.
   */
  given: number;
  /**
   * Lessons to come.
   */
  to_come: number;
  /**
   * Lessons missed.
   */
  missed: number;
}
/**
 * Something that may be written now.
 *
 */
export interface FollowUp {
  /**
   * What it is about; the same is not proposed twice.
   */
  key: string;
  kind: FollowUpKind;
  /**
   * As a sentence.
   */
  what: string;
  /**
   * Why.
   */
  why: string;
  /**
   * To which student.
   */
  student: StudentId | null;
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * Which letter.
   */
  letter: LetterId | null;
}
/**
 * A font that pages were laid out with: enough to find it again and to know it is the same.
 *
 */
export interface FontUsed {
  /**
   * The family's name.
   */
  family: string;
  weight: Weight;
  /**
   * SHA-256 of the font file, in lower-case hex.
   */
  sha256: string;
  /**
   * Which face of a collection file; 0 for a plain font file.
   */
  index: number;
  /**
   * Whether the program brings the font with it.
   */
  shipped: boolean;
}
/**
 * What of a payment is for an invoice.
 *
 */
export interface ForInvoice {
  invoice: InvoiceId;
  /**
   * How much, a decimal.
   */
  amount: string;
}
/**
 * Something found.
 *
 */
export interface Found {
  kind: FoundKind;
  /**
   * Its id.
   */
  id: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * What tells it from others of its name: whose goal it is; empty where nothing is needed.
   */
  of: string;
}
/**
 * Hours of the coach on a day in which a lesson could still be sold.
 *
 */
export interface FreeHours {
  day: Day;
  from: Time;
  to: Time;
}
/**
 * Some hours of a day on a facility's clock.
 *
 */
export interface FreeStretch {
  from: Time;
  to: Time;
}
/**
 * A focus goal as stored.
 *
 */
export interface Goal {
  id: GoalId;
  student: StudentId;
  /**
   * A skill of the pack or of the coach's own; empty for none.
   */
  skill: string;
  condition: Condition;
  counts: Counts;
  /**
   * The second fact that is counted apart, if any: the result beside the choice, or the choice
   * beside the result.
   */
  apart: Counts | null;
  criterion: Criterion;
  /**
   * First tries of a retest that are not counted.
   */
  uncounted: number;
  /**
   * Order of priority, 1 first.
   */
  rank: number;
  set_on: Day;
  /**
   * The goal it was raised from.
   */
  came_from: GoalId | null;
  /**
   * Its words, oldest first; the last are in force.
   */
  words: Words[];
  /**
   * Its title, as in "Lob serve, first bounce short of the line".
   */
  title: string;
}
/**
 * The words in force from a day on.
 *
 */
export interface Words {
  since: Day;
  /**
   * What the student tells themselves.
   */
  cue: string;
  /**
   * Where the ball should go, in words.
   */
  aim: string;
  /**
   * The day on which the coach saw this cue land, if it did.
   */
  landed: Day | null;
}
/**
 * Whose decisions.
 *
 */
export interface GoalsAcceptInput {
  visit: VisitId;
}
/**
 * What is proposed for a goal at a visit's end.
 *
 */
export interface Proposal {
  goal: Shown;
  how: How;
  /**
   * What is proposed: carry on; `None` for a goal that closes by itself because it is kept, or
   * that is closed already.
   */
  propose: Choice | null;
  /**
   * Why, in words.
   */
  why: string;
  /**
   * Whether it was decided at this visit already.
   */
  decided: Decision | null;
}
/**
 * A goal as shown.
 *
 */
export interface Shown {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * Where a goal stands and how it came there.
 *
 */
export interface Standing {
  state: State;
  /**
   * The reason, in words.
   */
  why: string;
  /**
   * The visit at which it was last moved to kept.
   */
  kept_at: VisitId | null;
  /**
   * Every step, in time.
   */
  steps: Step[];
}
/**
 * What a block or decision did.
 *
 */
export interface Step {
  /**
   * The visit; `None` for a decision between visits.
   */
  visit: VisitId | null;
  day: Day;
  /**
   * The block, where one did it.
   */
  block: BlockId | null;
  from: State;
  to: State;
  /**
   * Why, in words.
   */
  why: string;
  /**
   * The change the block shows.
   */
  since: Since | null;
}
/**
 * A change against the block it is measured from.
 *
 */
export interface Since {
  before: Count;
  visit: VisitId;
  day: Day;
  /**
   * Rate after minus rate before.
   */
  change: number;
  /**
   * Lower end of the rough 95 % range (Newcombe 1998, method 10).
   */
  low: number;
  /**
   * Upper end.
   */
  high: number;
  word: ChangeWord;
}
/**
 * An end test that was passed at a visit only after others were not.
 *
 */
export interface Repeated {
  visit: VisitId;
  /**
   * How many goes it took, the passing one among them.
   */
  goes: number;
  /**
   * What that is worth, in words.
   */
  words: string;
}
/**
 * New words for a goal, from today on; the old ones are kept with their dates.
 *
 */
export interface GoalsChangeWordsInput {
  goal: GoalId;
  /**
   * The cue.
   */
  cue: string;
  /**
   * The aim, in words.
   */
  aim?: string;
  /**
   * From this day, as YYYY-MM-DD; left out for today.
   */
  day?: string;
}
/**
 * A goal as shown.
 *
 */
export interface GoalsChangeWordsOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * Whose goals.
 *
 */
export interface GoalsChartInput {
  student: StudentId;
}
/**
 * The whole chart.
 *
 */
export interface GoalsChartOutput {
  /**
   * The visits, in time.
   */
  columns: Column[];
  /**
   * The goals: a raised goal stands right above the one it was raised to.
   */
  lines: Line[];
}
/**
 * A line: one goal.
 *
 */
export interface Line {
  goal: GoalId;
  condition: Condition;
  criterion: Criterion;
  state: State;
  /**
   * Why, in words.
   */
  why: string;
  /**
   * The goal it was raised from: its line joins this one.
   */
  came_from: GoalId | null;
  /**
   * The visit at which it was kept.
   */
  kept_at: VisitId | null;
  /**
   * Whether it is worked on at most as one of so many, or waits.
   */
  waits: boolean;
  /**
   * Its cells, in time: every visit it was at.
   */
  cells: Cell[];
  /**
   * Its title.
   */
  title: string;
}
/**
 * A cue that landed.
 *
 */
export interface GoalsCueLandedInput {
  goal: GoalId;
  /**
   * Whether it landed; false takes the mark away.
   */
  landed: boolean;
  /**
   * The day, as YYYY-MM-DD; left out for today.
   */
  day?: string;
}
/**
 * A goal as shown.
 *
 */
export interface GoalsCueLandedOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * A decision to record.
 *
 */
export interface GoalsDecideInput {
  goal: GoalId;
  /**
   * The visit; left out between visits.
   */
  visit?: VisitId | null;
  kind: Choice;
  /**
   * Why; needed to close and to set aside.
   */
  reason?: string;
}
/**
 * A goal as shown.
 *
 */
export interface GoalsDecideOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * Which block.
 *
 */
export interface GoalsEndBlockInput {
  block: BlockId;
}
/**
 * A block of tries.
 *
 */
export interface GoalsEndBlockOutput {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * A total counted elsewhere.
 *
 */
export interface GoalsEnterTotalInput {
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson?: LessonId | null;
  kind: Kind;
  /**
   * Another condition than the goal's, for practice.
   */
  condition?: Condition | null;
  /**
   * How many were made, the first tries that are not counted left out.
   */
  made?: number;
  /**
   * Of how many.
   */
  tries?: number;
  /**
   * The second fact, where the goal counts two apart.
   */
  also?: number | null;
  /**
   * For a goal of at most so many a game: how often it happened in this whole game; then there
   * are no tries.
   */
  in_game?: number | null;
  /**
   * The day it was played, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
  source?: Source;
}
/**
 * A block of tries.
 *
 */
export interface GoalsEnterTotalOutput {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * What the misses of a block are put down to.
 *
 */
export interface GoalsGiveReasonsInput {
  block: BlockId;
  /**
   * Each reason with its number of misses; an empty list takes all reasons away.
   */
  misses: Reason[];
}
/**
 * One reason.
 *
 */
export interface Reason {
  /**
   * The reason, in the coach's words.
   */
  reason: string;
  /**
   * How many misses.
   */
  times: number;
}
/**
 * A block of tries.
 *
 */
export interface GoalsGiveReasonsOutput {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * A quick note to write.
 *
 */
export interface GoalsJotInput {
  visit: VisitId;
  /**
   * The lesson, if any.
   */
  lesson?: LessonId | null;
  /**
   * The goal it is about, if any.
   */
  goal?: GoalId | null;
  /**
   * The words.
   */
  words: string;
}
/**
 * A quick note.
 *
 */
export interface Jotting {
  id: JottingId;
  /**
   * The goal it is about, if any.
   */
  goal: GoalId | null;
  day: Day;
  /**
   * The words.
   */
  words: string;
}
/**
 * Whose decisions.
 *
 */
export interface GoalsJottingsInput {
  visit: VisitId;
}
/**
 * Whose goals.
 *
 */
export interface GoalsListInput {
  student: StudentId;
}
/**
 * A goal in a list: where it stands, without the evidence for it.
 *
 */
export interface Listed {
  goal: Goal;
  state: State;
  /**
   * The reason, in words.
   */
  why: string;
}
/**
 * Whose decisions.
 *
 */
export interface GoalsLookBackInput {
  visit: VisitId;
}
/**
 * Whose decisions.
 *
 */
export interface GoalsOnCourtInput {
  visit: VisitId;
}
/**
 * One goal on court.
 *
 */
export interface OnCourt {
  goal: Shown;
  how: How;
  /**
   * The block being counted now, if any.
   */
  open: Block | null;
  /**
   * Its blocks at this visit that were ended.
   */
  ended: Block[];
  offer: Kind;
  /**
   * Whether it waits because so many others come first.
   */
  waits: boolean;
}
/**
 * Whose decisions.
 *
 */
export interface GoalsProposalsInput {
  visit: VisitId;
}
/**
 * A raise.
 *
 */
export interface GoalsRaiseInput {
  goal: GoalId;
  to: SetGoal;
}
/**
 * A goal to set.
 *
 */
export interface SetGoal {
  student: StudentId;
  /**
   * The visit it is set at; left out between visits.
   */
  visit?: VisitId | null;
  /**
   * A skill of the pack or of the coach's own; empty for none.
   */
  skill?: string;
  condition: Condition;
  counts: Counts;
  criterion?: CriterionKind;
  /**
   * How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
   */
  need: number;
  /**
   * Of how many tries; of `at_most`, in how many games running; not asked of a rate.
   */
  of?: number;
  /**
   * Of a rate: the least number of chances.
   */
  least?: number;
  /**
   * The second fact to count apart: the result beside the choice, or the choice beside the
   * result; left out for none.
   */
  apart?: Counts | null;
  /**
   * First tries of a retest that are not counted; 3 unless said.
   */
  uncounted?: number;
  /**
   * The cue; empty while there is none.
   */
  cue?: string;
  /**
   * The aim, in words.
   */
  aim?: string;
  /**
   * The day it was set, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
  /**
   * Its title.
   */
  title: string;
}
/**
 * A goal as shown.
 *
 */
export interface GoalsRaiseOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * A new order of priority.
 *
 */
export interface GoalsRankInput {
  student: StudentId;
  /**
   * Goals, first the most urgent; goals left out follow in the order they had.
   */
  order: GoalId[];
}
/**
 * Whose goals.
 *
 */
export interface GoalsReasonsInput {
  student: StudentId;
}
/**
 * A goal to set.
 *
 */
export interface GoalsSetInput {
  student: StudentId;
  /**
   * The visit it is set at; left out between visits.
   */
  visit?: VisitId | null;
  /**
   * A skill of the pack or of the coach's own; empty for none.
   */
  skill?: string;
  condition: Condition;
  counts: Counts;
  criterion?: CriterionKind;
  /**
   * How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
   */
  need: number;
  /**
   * Of how many tries; of `at_most`, in how many games running; not asked of a rate.
   */
  of?: number;
  /**
   * Of a rate: the least number of chances.
   */
  least?: number;
  /**
   * The second fact to count apart: the result beside the choice, or the choice beside the
   * result; left out for none.
   */
  apart?: Counts | null;
  /**
   * First tries of a retest that are not counted; 3 unless said.
   */
  uncounted?: number;
  /**
   * The cue; empty while there is none.
   */
  cue?: string;
  /**
   * The aim, in words.
   */
  aim?: string;
  /**
   * The day it was set, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
  /**
   * Its title.
   */
  title: string;
}
/**
 * A goal as shown.
 *
 */
export interface GoalsSetOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * Which goal.
 *
 */
export interface GoalsShowInput {
  goal: GoalId;
}
/**
 * A goal as shown.
 *
 */
export interface GoalsShowOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * A block to start.
 *
 */
export interface GoalsStartBlockInput {
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it is in, if any.
   */
  lesson?: LessonId | null;
  kind: Kind;
  /**
   * Another condition than the goal's, for practice.
   */
  condition?: Condition | null;
}
/**
 * A block of tries.
 *
 */
export interface GoalsStartBlockOutput {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * Which block.
 *
 */
export interface GoalsTakeBackInput {
  block: BlockId;
}
/**
 * A block of tries.
 *
 */
export interface GoalsTakeBackOutput {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * One try.
 *
 */
export interface GoalsTouchInput {
  block: BlockId;
  /**
   * Made or missed.
   */
  made: boolean;
  /**
   * The second fact, where the goal counts two apart.
   */
  also?: boolean | null;
}
/**
 * A block of tries.
 *
 */
export interface GoalsTouchOutput {
  id: BlockId;
  goal: GoalId;
  visit: VisitId;
  /**
   * The lesson it was in, if any.
   */
  lesson: LessonId | null;
  /**
   * Its order among the goal's blocks at the visit.
   */
  place: number;
  kind: Kind;
  condition: Condition;
  source: Source;
  day: Day;
  /**
   * First tries that are not counted.
   */
  uncounted: number;
  /**
   * The tries counted live, in order, those not counted included.
   */
  tries: boolean[];
  count: Count;
  /**
   * The second fact, where the goal counts two apart: of the tries that count, how many had it.
   */
  also: number | null;
  /**
   * Where the block is one whole game: how often it happened in it.
   */
  in_game: number | null;
  /**
   * What the misses were put down to, where the coach said.
   */
  misses: Miss[];
  /**
   * Whether it was ended.
   */
  ended: boolean;
}
/**
 * A criterion to weigh: so many of so many, or a rate over its least number of chances.
 *
 */
export interface GoalsWeighInput {
  criterion?: CriterionKind;
  /**
   * How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
   */
  need: number;
  /**
   * Of how many tries; of `at_most`, in how many games running.
   */
  of?: number;
  /**
   * Of a rate: the least number of chances.
   */
  least?: number;
}
/**
 * What it means.
 *
 */
export interface GoalsWeighOutput {
  /**
   * For true rates of 50, 60, 70, 80 and 90 %.
   */
  chances: Chance[];
  /**
   * The same in one sentence.
   */
  words: string;
}
/**
 * A group of skills.
 *
 */
export interface Group {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
}
/**
 * A guest with a consent.
 *
 */
export interface GuestConsent {
  consent: Consent;
  /**
   * Its question's name.
   */
  words: string;
  /**
   * Where it stands, in words.
   */
  stands: string;
  /**
   * What follows from a no, or from its being withdrawn; empty while it holds.
   */
  follows: string;
}
/**
 * What is kept of a student's health, and what erasing it alone would leave.
 *
 */
export interface HealthKept {
  /**
   * What would go, as in "2 injuries and restrictions".
   */
  lines: string[];
  /**
   * What stays although it may speak of health, a sentence each.
   */
  stays: string[];
  /**
   * Why it cannot be done now, as a sentence; empty when it can.
   */
  against: string;
}
/**
 * Whose last plan.
 *
 */
export interface HomeLastInput {
  student: StudentId;
  /**
   * The visit before which the plan was made; left out for the student's visit that is open, or
   * for the newest plan of all where none is.
   */
  before?: VisitId | null;
}
/**
 * A home plan as it stands.
 *
 */
export interface HomePlan {
  id: HomePlanId;
  student: StudentId;
  visit: VisitId;
  /**
   * When that visit was, in words.
   */
  when: string;
  /**
   * The standing warm-up, as it was then.
   */
  warm_up: string;
  /**
   * What else is to be said.
   */
  note: string;
  /**
   * Its lines, in order.
   */
  lines: HomeLine[];
}
/**
 * A line of a home plan.
 *
 */
export interface HomeLine {
  id: HomeLineId;
  /**
   * The goal it works for, if any.
   */
  goal: GoalId | null;
  /**
   * The shot or exercise.
   */
  what: string;
  /**
   * How much at a time.
   */
  amount: number;
  unit: HomeUnit;
  /**
   * How often a week.
   */
  a_week: number;
  /**
   * The whole line in words: "Lob serve: 20 tries, three times a week".
   */
  words: string;
  /**
   * What the student told of it; empty while nothing was told.
   */
  told: string;
  /**
   * The day it was told.
   */
  told_on: Day | null;
  /**
   * That goal's title; empty without one.
   */
  title: string;
}
/**
 * The whole plan of a visit.
 *
 */
export interface HomePlanInput {
  visit: VisitId;
  /**
   * The standing warm-up.
   */
  warm_up?: string;
  /**
   * What else is to be said.
   */
  note?: string;
  /**
   * Its lines, in order. No line, no warm-up and no note: there is no plan any more.
   */
  lines?: PlanLine[];
}
/**
 * A line as it is typed.
 *
 */
export interface PlanLine {
  /**
   * The line it was, so that what was told of it stays with it; left out for a new one.
   */
  line?: HomeLineId | null;
  /**
   * The goal it works for, if any.
   */
  goal?: GoalId | null;
  /**
   * The shot or exercise.
   */
  what: string;
  /**
   * How much at a time, 1 to 500.
   */
  amount: number;
  unit: HomeUnit;
  /**
   * How often a week, 1 to 14.
   */
  a_week: number;
}
/**
 * A visit's plan, or what one would begin with.
 *
 */
export interface HomePlanOutput {
  /**
   * The plan; `None` while there is none.
   */
  plan: HomePlan | null;
  /**
   * The warm-up a new plan begins with: that of the student's last plan.
   */
  warm_up: string;
  /**
   * Lines for the goals that go on and are in no line yet.
   */
  proposals: ProposedLine[];
}
/**
 * A line that a carried goal suggests, to take or change.
 *
 */
export interface ProposedLine {
  goal: GoalId;
  /**
   * The shot, as the goal names it.
   */
  what: string;
  /**
   * How much at a time: as many tries as the goal's criterion asks for, or twenty.
   */
  amount: number;
  unit: HomeUnit;
  /**
   * How often a week: three times, to begin with. Common practice, no source.
   */
  a_week: number;
  /**
   * Why the goal goes on.
   */
  why: string;
  /**
   * Its title.
   */
  title: string;
}
/**
 * Which visit's plan.
 *
 */
export interface HomeShowInput {
  visit: VisitId;
}
/**
 * A visit's plan, or what one would begin with.
 *
 */
export interface HomeShowOutput {
  /**
   * The plan; `None` while there is none.
   */
  plan: HomePlan | null;
  /**
   * The warm-up a new plan begins with: that of the student's last plan.
   */
  warm_up: string;
  /**
   * Lines for the goals that go on and are in no line yet.
   */
  proposals: ProposedLine[];
}
/**
 * A report back.
 *
 */
export interface HomeTellInput {
  line: HomeLineId;
  /**
   * What the student told; empty takes the report away.
   */
  told: string;
  /**
   * The day it was told, as YYYY-MM-DD; left out for today.
   */
  day?: string;
}
/**
 * A home plan as it stands.
 *
 */
export interface HomeTellOutput {
  id: HomePlanId;
  student: StudentId;
  visit: VisitId;
  /**
   * When that visit was, in words.
   */
  when: string;
  /**
   * The standing warm-up, as it was then.
   */
  warm_up: string;
  /**
   * What else is to be said.
   */
  note: string;
  /**
   * Its lines, in order.
   */
  lines: HomeLine[];
}
/**
 * A report as kept.
 *
 */
export interface Incident {
  id: IncidentId;
  /**
   * The name of whom it happened to.
   */
  name: string;
  report: Report;
  /**
   * The same, to be read.
   */
  lines: ReportLine[];
  day: Day;
  /**
   * The facility's name.
   */
  facility_name: string;
  recorded: Instant;
  /**
   * When it was signed.
   */
  signed: Instant | null;
  /**
   * The name it was signed with.
   */
  signature: string;
  /**
   * Its seal: SHA-256 over all of it.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept; `true` while it is not signed.
   */
  whole: boolean;
  /**
   * What was added since.
   */
  additions: Addition[];
}
/**
 * A report; the form and the record are the same. To whom, what happened and whether it was a blow to
 * the head must be said; the rest can be filled in until it is signed.
 *
 */
export interface Report {
  /**
   * The student it happened to; left out for someone who is no student.
   */
  student: StudentId | null;
  /**
   * In which lesson.
   */
  lesson: LessonId | null;
  /**
   * The name of someone who is no student.
   */
  person: string;
  /**
   * What they were doing there: guest, opponent, bystander.
   */
  role: string;
  /**
   * Their age, as told.
   */
  age: string;
  /**
   * The guardian of a minor, with how to reach them.
   */
  guardian: string;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day: string;
  /**
   * The time, as HH:MM; empty when not known.
   */
  time: string;
  /**
   * The facility.
   */
  facility: FacilityId | null;
  /**
   * Where exactly.
   */
  place: string;
  /**
   * The facility's own report number.
   */
  number: string;
  /**
   * What was being done.
   */
  activity: string;
  /**
   * What happened, in order, as seen.
   */
  happened: string;
  /**
   * The part of the body, as the person says.
   */
  body_part: string;
  /**
   * How it came about: ball, racquet, fall, collision.
   */
  mechanism: string;
  /**
   * Equipment and eyewear worn.
   */
  equipment: string;
  /**
   * First aid, and by whom.
   */
  first_aid: string;
  called: Answer;
  /**
   * When, as HH:MM.
   */
  called_at: string;
  /**
   * Whether there was a blow to the head, or signs after one; must be answered, if only with "not
   * known".
   */
  head: Answer | null;
  /**
   * How the blow came about.
   */
  head_cause: string;
  /**
   * Whether the person was unconscious.
   */
  unconscious: Answer | null;
  /**
   * Whether they did not remember.
   */
  memory: Answer | null;
  /**
   * Whether they had a seizure.
   */
  seizure: Answer | null;
  /**
   * Whether there were concussions before.
   */
  earlier: Answer | null;
  /**
   * Who saw it, with how to reach them.
   */
  witnesses: string;
  /**
   * Who was told, and when.
   */
  told: string;
  /**
   * What is to follow.
   */
  follow_up: string;
  /**
   * Who writes this.
   */
  author: string;
}
/**
 * A line of a report as it is read.
 *
 */
export interface ReportLine {
  /**
   * What it is about.
   */
  about: string;
  /**
   * What it says.
   */
  words: string;
}
/**
 * An injury or restriction as written down.
 *
 */
export interface Injury {
  id: InjuryId;
  student: StudentId;
  kind: InjuryKind;
  /**
   * In the student's words.
   */
  words: string;
  since: Day;
  /**
   * The day the student said it was over.
   */
  over: Day | null;
  /**
   * Whether there is to be no lesson before a professional has cleared it.
   */
  asks: boolean;
  /**
   * Whether a clearance counts today.
   */
  cleared: boolean;
  /**
   * The report it was written down with.
   */
  incident: IncidentId | null;
}
/**
 * What is acknowledged, by whom.
 *
 */
export interface IntakeAcknowledgeNoticeInput {
  student: StudentId;
  version: VersionId;
  by: Accepting;
}
/**
 * An acknowledgement as kept.
 *
 */
export interface IntakeAcknowledgeNoticeOutput {
  id: AcknowledgementId;
  notice: NoticeId;
  version: VersionId;
  /**
   * That version's number.
   */
  number: number;
  student: StudentId;
  /**
   * Who accepted it.
   */
  name: string;
  relation: Speaks;
  /**
   * What the guardian is to the student.
   */
  as_what: string;
  day: Day;
  how: OnWhat;
  /**
   * The signed paper.
   */
  scan: ScanNamed | null;
  /**
   * The seal: SHA-256 over the text's digest, the names and the day.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept.
   */
  whole: boolean;
  /**
   * Its title.
   */
  title: string;
}
/**
 * Of which student.
 *
 */
export interface IntakeAcknowledgementsInput {
  student: StudentId;
}
/**
 * A paper to add.
 *
 */
export interface IntakeAddCertificateInput {
  paper: PaperInput;
  /**
   * A scan of it.
   */
  scan?: ScanGiven | null;
}
/**
 * A paper; the form and the record are the same.
 *
 */
export interface PaperInput {
  kind: CertificateKind;
  /**
   * Its name.
   */
  words: string;
  /**
   * Who issued it.
   */
  by_whom?: string;
  /**
   * Its number.
   */
  number?: string;
  /**
   * The day it was issued, as YYYY-MM-DD.
   */
  since?: string;
  /**
   * The last day it holds; empty for without end.
   */
  until?: string;
}
/**
 * A paper as kept.
 *
 */
export interface IntakeAddCertificateOutput {
  id: CertificateId;
  paper: Paper;
  /**
   * A scan of it.
   */
  scan: ScanNamed | null;
  /**
   * Whether it has ended.
   */
  over: boolean;
  /**
   * Whether it ends soon.
   */
  soon: boolean;
  /**
   * Until when it holds, in words.
   */
  stands: string;
}
/**
 * Something to add to a signed report.
 *
 */
export interface IntakeAddToIncidentInput {
  incident: IncidentId;
  /**
   * What.
   */
  words: string;
  /**
   * By whom.
   */
  author: string;
}
/**
 * A report as kept.
 *
 */
export interface IntakeAddToIncidentOutput {
  id: IncidentId;
  /**
   * The name of whom it happened to.
   */
  name: string;
  report: Report;
  /**
   * The same, to be read.
   */
  lines: ReportLine[];
  day: Day;
  /**
   * The facility's name.
   */
  facility_name: string;
  recorded: Instant;
  /**
   * When it was signed.
   */
  signed: Instant | null;
  /**
   * The name it was signed with.
   */
  signature: string;
  /**
   * Its seal: SHA-256 over all of it.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept; `true` while it is not signed.
   */
  whole: boolean;
  /**
   * What was added since.
   */
  additions: Addition[];
}
/**
 * Answers to write down.
 *
 */
export interface IntakeAnswerReadinessInput {
  student: StudentId;
  answers: AnswersInput;
  /**
   * Who answered.
   */
  answered: string;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day?: string;
}
/**
 * Answers as they were given, and what follows.
 *
 */
export interface IntakeAnswerReadinessOutput {
  id: ReadinessId;
  day: Day;
  answers: Answers;
  /**
   * Who answered.
   */
  answered: string;
  outcome: Outcome;
  /**
   * The same in words.
   */
  words: string;
  again: Day;
}
/**
 * Which paper.
 *
 */
export interface IntakeArchiveCertificateInput {
  certificate: CertificateId;
}
/**
 * A paper as kept.
 *
 */
export interface IntakeArchiveCertificateOutput {
  id: CertificateId;
  paper: Paper;
  /**
   * A scan of it.
   */
  scan: ScanNamed | null;
  /**
   * Whether it has ended.
   */
  over: boolean;
  /**
   * Whether it ends soon.
   */
  soon: boolean;
  /**
   * Until when it holds, in words.
   */
  stands: string;
}
/**
 * Which notice.
 *
 */
export interface IntakeArchiveNoticeInput {
  notice: NoticeId;
}
/**
 * A notice with its newest version.
 *
 */
export interface IntakeArchiveNoticeOutput {
  id: NoticeId;
  /**
   * For which facility; `None` for every one.
   */
  facility: FacilityId | null;
  /**
   * The facility's name; empty for every one.
   */
  place: string;
  /**
   * For which sport; empty for every one.
   */
  sport: string;
  language: Language;
  /**
   * The day it was put away.
   */
  archived: Day | null;
  version: NoticeVersion;
  /**
   * How many students have acknowledged that version.
   */
  acknowledged: number;
  /**
   * Its title.
   */
  title: string;
}
/**
 * One version of a notice.
 *
 */
export interface NoticeVersion {
  id: VersionId;
  /**
   * Its number.
   */
  number: number;
  made: Day;
  /**
   * What is acknowledged, to the letter.
   */
  text: string;
  /**
   * The text's SHA-256, in hexadecimal.
   */
  sha256: string;
  /**
   * The same text by its parts.
   */
  parts: NoticePart[];
}
/**
 * A part of a notice.
 *
 */
export interface NoticePart {
  item: NoticeItem;
  /**
   * Its heading.
   */
  heading: string;
  /**
   * Its text.
   */
  text: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface IntakeCertificatesInput {}
/**
 * A paper to change.
 *
 */
export interface IntakeChangeCertificateInput {
  certificate: CertificateId;
  paper: PaperInput;
  /**
   * A new scan; left out to keep the one there is.
   */
  scan?: ScanGiven | null;
}
/**
 * A paper as kept.
 *
 */
export interface IntakeChangeCertificateOutput {
  id: CertificateId;
  paper: Paper;
  /**
   * A scan of it.
   */
  scan: ScanNamed | null;
  /**
   * Whether it has ended.
   */
  over: boolean;
  /**
   * Whether it ends soon.
   */
  soon: boolean;
  /**
   * Until when it holds, in words.
   */
  stands: string;
}
/**
 * A report to change before it is signed.
 *
 */
export interface IntakeChangeIncidentInput {
  incident: IncidentId;
  report: ReportInput;
}
/**
 * A report; the form and the record are the same. To whom, what happened and whether it was a blow to
 * the head must be said; the rest can be filled in until it is signed.
 *
 */
export interface ReportInput {
  /**
   * The student it happened to; left out for someone who is no student.
   */
  student?: StudentId | null;
  /**
   * In which lesson.
   */
  lesson?: LessonId | null;
  /**
   * The name of someone who is no student.
   */
  person?: string;
  /**
   * What they were doing there: guest, opponent, bystander.
   */
  role?: string;
  /**
   * Their age, as told.
   */
  age?: string;
  /**
   * The guardian of a minor, with how to reach them.
   */
  guardian?: string;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  /**
   * The time, as HH:MM; empty when not known.
   */
  time?: string;
  /**
   * The facility.
   */
  facility?: FacilityId | null;
  /**
   * Where exactly.
   */
  place?: string;
  /**
   * The facility's own report number.
   */
  number?: string;
  /**
   * What was being done.
   */
  activity?: string;
  /**
   * What happened, in order, as seen.
   */
  happened?: string;
  /**
   * The part of the body, as the person says.
   */
  body_part?: string;
  /**
   * How it came about: ball, racquet, fall, collision.
   */
  mechanism?: string;
  /**
   * Equipment and eyewear worn.
   */
  equipment?: string;
  /**
   * First aid, and by whom.
   */
  first_aid?: string;
  called?: Answer;
  /**
   * When, as HH:MM.
   */
  called_at?: string;
  /**
   * Whether there was a blow to the head, or signs after one; must be answered, if only with "not
   * known".
   */
  head?: Answer | null;
  /**
   * How the blow came about.
   */
  head_cause?: string;
  /**
   * Whether the person was unconscious.
   */
  unconscious?: Answer | null;
  /**
   * Whether they did not remember.
   */
  memory?: Answer | null;
  /**
   * Whether they had a seizure.
   */
  seizure?: Answer | null;
  /**
   * Whether there were concussions before.
   */
  earlier?: Answer | null;
  /**
   * Who saw it, with how to reach them.
   */
  witnesses?: string;
  /**
   * Who was told, and when.
   */
  told?: string;
  /**
   * What is to follow.
   */
  follow_up?: string;
  /**
   * Who writes this.
   */
  author?: string;
}
/**
 * A report as kept.
 *
 */
export interface IntakeChangeIncidentOutput {
  id: IncidentId;
  /**
   * The name of whom it happened to.
   */
  name: string;
  report: Report;
  /**
   * The same, to be read.
   */
  lines: ReportLine[];
  day: Day;
  /**
   * The facility's name.
   */
  facility_name: string;
  recorded: Instant;
  /**
   * When it was signed.
   */
  signed: Instant | null;
  /**
   * The name it was signed with.
   */
  signature: string;
  /**
   * Its seal: SHA-256 over all of it.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept; `true` while it is not signed.
   */
  whole: boolean;
  /**
   * What was added since.
   */
  additions: Addition[];
}
/**
 * An injury or restriction to change.
 *
 */
export interface IntakeChangeInjuryInput {
  injury: InjuryId;
  /**
   * In the student's words.
   */
  words: string;
  /**
   * The day the student said it was over; empty while it goes on. After a blow to the head that
   * lets nobody play: a clearance does.
   */
  over?: string;
  /**
   * Whether there is to be no lesson before a professional has cleared it.
   */
  asks?: boolean;
}
/**
 * An injury or restriction as written down.
 *
 */
export interface IntakeChangeInjuryOutput {
  id: InjuryId;
  student: StudentId;
  kind: InjuryKind;
  /**
   * In the student's words.
   */
  words: string;
  since: Day;
  /**
   * The day the student said it was over.
   */
  over: Day | null;
  /**
   * Whether there is to be no lesson before a professional has cleared it.
   */
  asks: boolean;
  /**
   * Whether a clearance counts today.
   */
  cleared: boolean;
  /**
   * The report it was written down with.
   */
  incident: IncidentId | null;
}
/**
 * Of which student.
 *
 */
export interface IntakeClearancesInput {
  student: StudentId;
}
/**
 * Of which student.
 *
 */
export interface IntakeConsentsInput {
  student: StudentId;
}
/**
 * What a notice is to be for.
 *
 */
export interface IntakeDraftNoticeInput {
  /**
   * A new version of this one; left out for a new notice.
   */
  notice?: NoticeId | null;
  /**
   * For which facility; left out for every one.
   */
  facility?: FacilityId | null;
  /**
   * For which sport; empty for every one.
   */
  sport?: string;
  language?: Language;
}
/**
 * A notice to be read through before it is published.
 *
 */
export interface IntakeDraftNoticeOutput {
  /**
   * Its parts.
   */
  parts: NoticePart[];
  /**
   * For a new version: the parts' texts as they would be written today, where they differ.
   */
  suggested: NoticePart[];
  /**
   * Its title.
   */
  title: string;
}
/**
 * Which report to erase.
 *
 */
export interface IntakeEraseIncidentInput {
  incident: IncidentId;
}
/**
 * What was erased of someone, and what is left to do.
 *
 */
export interface IntakeEraseIncidentOutput {
  /**
   * What was done, as a sentence.
   */
  words: string;
  /**
   * What is left to do, a sentence each.
   */
  left: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface IntakeEyewearInput {}
/**
 * Of which student.
 *
 */
export interface IntakeFormsInput {
  student: StudentId;
}
/**
 * An answer to write down.
 *
 */
export interface IntakeGiveConsentInput {
  /**
   * Whose; left out for a guest.
   */
  student?: StudentId | null;
  /**
   * The name of a guest or opponent; left out for a student.
   */
  guest?: string;
  kind: ConsentKind;
  /**
   * Whether it is given; a no is an answer too.
   */
  given: boolean;
  by: Accepting;
  /**
   * The last day it holds; empty: until it is withdrawn.
   */
  until?: string;
}
/**
 * An answer as kept.
 *
 */
export interface IntakeGiveConsentOutput {
  id: ConsentId;
  /**
   * Whose.
   */
  student: StudentId | null;
  /**
   * The guest.
   */
  guest: string | null;
  kind: ConsentKind;
  /**
   * Whether it was given.
   */
  given: boolean;
  /**
   * Who answered.
   */
  name: string;
  relation: Speaks;
  /**
   * What the guardian is to the student.
   */
  as_what: string;
  day: Day;
  how: OnWhat;
  /**
   * The paper.
   */
  scan: ScanNamed | null;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * The day it was withdrawn.
   */
  withdrawn: Day | null;
  /**
   * Who withdrew it.
   */
  by_whom: string;
}
/**
 * To go on all the same.
 *
 */
export interface IntakeGoOnInput {
  student: StudentId;
  /**
   * In which lesson; left out on a day without a planned one.
   */
  lesson?: LessonId | null;
  /**
   * Why.
   */
  reason: string;
}
/**
 * How one student stands before one lesson.
 *
 */
export interface IntakeGoOnOutput {
  student: StudentId;
  /**
   * Their visit.
   */
  visit: VisitId | null;
  /**
   * Their name.
   */
  name: string;
  /**
   * Which lesson; `None` for someone who has none yet.
   */
  lesson: LessonId | null;
  state: ReadyState;
  /**
   * Their age on the day, where the birth date is known.
   */
  age: number | null;
  /**
   * Whether they are a minor on the day, where it is known.
   */
  minor: boolean | null;
  /**
   * What is missing or has expired.
   */
  missing: ReadyItem[];
  /**
   * What to be careful of; nothing of it keeps anyone off court.
   */
  careful: string[];
  /**
   * That the coach went on all the same.
   */
  went_on: WentOn | null;
  /**
   * The answer in a sentence.
   */
  words: string;
}
/**
 * One thing that is missing, or to be careful of.
 *
 */
export interface ReadyItem {
  about: ReadyAbout;
  /**
   * In words.
   */
  words: string;
}
/**
 * That the coach went on all the same.
 *
 */
export interface WentOn {
  at: Instant;
  /**
   * Why.
   */
  reason: string;
  /**
   * What was missing then.
   */
  missing: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface IntakeGuestConsentsInput {}
/**
 * Which report.
 *
 */
export interface IntakeIncidentInput {
  incident: IncidentId;
}
/**
 * A report as kept.
 *
 */
export interface IntakeIncidentOutput {
  id: IncidentId;
  /**
   * The name of whom it happened to.
   */
  name: string;
  report: Report;
  /**
   * The same, to be read.
   */
  lines: ReportLine[];
  day: Day;
  /**
   * The facility's name.
   */
  facility_name: string;
  recorded: Instant;
  /**
   * When it was signed.
   */
  signed: Instant | null;
  /**
   * The name it was signed with.
   */
  signature: string;
  /**
   * Its seal: SHA-256 over all of it.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept; `true` while it is not signed.
   */
  whole: boolean;
  /**
   * What was added since.
   */
  additions: Addition[];
}
/**
 * An input with nothing in it.
 *
 */
export interface IntakeIncidentsInput {}
/**
 * Of which student.
 *
 */
export interface IntakeInjuriesInput {
  student: StudentId;
}
/**
 * For whom.
 *
 */
export interface IntakeMakePageInput {
  student: StudentId;
}
/**
 * A page as made.
 *
 */
export interface IntakeMakePageOutput {
  /**
   * A name for its file.
   */
  name: string;
  /**
   * The whole page.
   */
  html: string;
  until: Day;
}
/**
 * An input with nothing in it.
 *
 */
export interface IntakeMinorRulesInput {}
/**
 * The coach's rules for minors, as the sport's body, the federation or local law has them; the form
 * and the record are the same.
 *
 */
export interface IntakeMinorRulesOutput {
  /**
   * From this age on one decides alone. 18 in most places; local law says.
   */
  majority: number;
  /**
   * Whether a lesson of a minor must be on a court that can be seen from outside.
   */
  observable: boolean;
  /**
   * Whether another adult must be there.
   */
  adult_present: boolean;
  /**
   * After so many months a guardian's consent to lessons is asked for again; 0: never.
   */
  consent_months: number;
  /**
   * Whether a second adult stands on every message to a minor.
   */
  second_adult: boolean;
  /**
   * Where these rules are from.
   */
  source: string;
  /**
   * The day the coach read them, as YYYY-MM-DD.
   */
  seen: string;
}
/**
 * An injury or restriction to write down.
 *
 */
export interface IntakeNoteInjuryInput {
  student: StudentId;
  kind: InjuryKind;
  /**
   * In the student's words.
   */
  words: string;
  /**
   * Since when, as YYYY-MM-DD; empty for today.
   */
  since?: string;
  /**
   * Whether there is to be no lesson before a professional has cleared it; after a blow to the
   * head always.
   */
  asks?: boolean;
}
/**
 * An injury or restriction as written down.
 *
 */
export interface IntakeNoteInjuryOutput {
  id: InjuryId;
  student: StudentId;
  kind: InjuryKind;
  /**
   * In the student's words.
   */
  words: string;
  since: Day;
  /**
   * The day the student said it was over.
   */
  over: Day | null;
  /**
   * Whether there is to be no lesson before a professional has cleared it.
   */
  asks: boolean;
  /**
   * Whether a clearance counts today.
   */
  cleared: boolean;
  /**
   * The report it was written down with.
   */
  incident: IncidentId | null;
}
/**
 * Which notice.
 *
 */
export interface IntakeNoticeInput {
  notice: NoticeId;
}
/**
 * A notice with its newest version.
 *
 */
export interface IntakeNoticeOutput {
  id: NoticeId;
  /**
   * For which facility; `None` for every one.
   */
  facility: FacilityId | null;
  /**
   * The facility's name; empty for every one.
   */
  place: string;
  /**
   * For which sport; empty for every one.
   */
  sport: string;
  language: Language;
  /**
   * The day it was put away.
   */
  archived: Day | null;
  version: NoticeVersion;
  /**
   * How many students have acknowledged that version.
   */
  acknowledged: number;
  /**
   * Its title.
   */
  title: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface IntakeNoticesInput {}
/**
 * For whom, and where.
 *
 */
export interface IntakeNoticesNeededInput {
  student: StudentId;
  /**
   * Where; left out for everywhere.
   */
  facility?: FacilityId | null;
}
/**
 * A notice that is asked for, and what came of it.
 *
 */
export interface NoticeNeeded {
  notice: Notice;
  /**
   * Its newest acknowledgement, of whichever version.
   */
  acknowledged: Acknowledgement | null;
  /**
   * Whether that is of the newest version.
   */
  current: boolean;
  /**
   * Where it stands, in words.
   */
  stands: string;
}
/**
 * A notice with its newest version.
 *
 */
export interface Notice {
  id: NoticeId;
  /**
   * For which facility; `None` for every one.
   */
  facility: FacilityId | null;
  /**
   * The facility's name; empty for every one.
   */
  place: string;
  /**
   * For which sport; empty for every one.
   */
  sport: string;
  language: Language;
  /**
   * The day it was put away.
   */
  archived: Day | null;
  version: NoticeVersion;
  /**
   * How many students have acknowledged that version.
   */
  acknowledged: number;
  /**
   * Its title.
   */
  title: string;
}
/**
 * Which facility.
 *
 */
export interface IntakePolicyInput {
  facility: FacilityId;
}
/**
 * A facility's own policy and rules; the form and the record are the same.
 *
 */
export interface Policy {
  /**
   * The name of its policy, waiver or rules.
   */
  name: string;
  /**
   * Where it can be read.
   */
  link: string;
  /**
   * The day the coach read it, as YYYY-MM-DD.
   */
  seen: string;
  /**
   * Whether each player signs the facility's own form.
   */
  form_needed: boolean;
  /**
   * Where it is signed, and where signed ones are kept.
   */
  form_where: string;
  /**
   * Whether a minor's lesson must be on a court that can be seen from outside.
   */
  observable: boolean;
  /**
   * Whether another adult has to be there for a minor's lesson.
   */
  adult_present: boolean;
  /**
   * The age from which one may be on court; left out where nothing was said.
   */
  youngest: number | null;
  /**
   * What else it says about safety and minors.
   */
  rules: string;
}
/**
 * A notice to publish.
 *
 */
export interface IntakePublishNoticeInput {
  /**
   * A new version of this one; left out for a new notice.
   */
  notice?: NoticeId | null;
  /**
   * For which facility; left out for every one.
   */
  facility?: FacilityId | null;
  /**
   * For which sport; empty for every one.
   */
  sport?: string;
  language?: Language;
  /**
   * Its ten parts.
   */
  parts: NoticePart[];
  /**
   * Its title.
   */
  title: string;
}
/**
 * A notice with its newest version.
 *
 */
export interface IntakePublishNoticeOutput {
  id: NoticeId;
  /**
   * For which facility; `None` for every one.
   */
  facility: FacilityId | null;
  /**
   * The facility's name; empty for every one.
   */
  place: string;
  /**
   * For which sport; empty for every one.
   */
  sport: string;
  language: Language;
  /**
   * The day it was put away.
   */
  archived: Day | null;
  version: NoticeVersion;
  /**
   * How many students have acknowledged that version.
   */
  acknowledged: number;
  /**
   * Its title.
   */
  title: string;
}
/**
 * A file of answers.
 *
 */
export interface IntakeReadAnswersInput {
  student: StudentId;
  /**
   * The file's bytes in base64 (RFC 4648).
   */
  content: string;
}
/**
 * What a file says.
 *
 */
export interface IntakeReadAnswersOutput {
  student: StudentId;
  /**
   * The answers that differ from what is kept.
   */
  answers: AnswerShown[];
  /**
   * How many say what is kept already.
   */
  same: number;
}
/**
 * Of which student.
 *
 */
export interface IntakeReadinessInput {
  student: StudentId;
}
/**
 * Answers as they were given, and what follows.
 *
 */
export interface Readiness {
  id: ReadinessId;
  day: Day;
  answers: Answers;
  /**
   * Who answered.
   */
  answered: string;
  outcome: Outcome;
  /**
   * The same in words.
   */
  words: string;
  again: Day;
}
/**
 * Several of them, as a plan has them.
 *
 */
export interface IntakeReadyAtInput {
  /**
   * Each.
   */
  places: AtPlace[];
}
/**
 * How one student stands before one lesson.
 *
 */
export interface Ready {
  student: StudentId;
  /**
   * Their visit.
   */
  visit: VisitId | null;
  /**
   * Their name.
   */
  name: string;
  /**
   * Which lesson; `None` for someone who has none yet.
   */
  lesson: LessonId | null;
  state: ReadyState;
  /**
   * Their age on the day, where the birth date is known.
   */
  age: number | null;
  /**
   * Whether they are a minor on the day, where it is known.
   */
  minor: boolean | null;
  /**
   * What is missing or has expired.
   */
  missing: ReadyItem[];
  /**
   * What to be careful of; nothing of it keeps anyone off court.
   */
  careful: string[];
  /**
   * That the coach went on all the same.
   */
  went_on: WentOn | null;
  /**
   * The answer in a sentence.
   */
  words: string;
}
/**
 * Which lesson.
 *
 */
export interface IntakeReadyInput {
  lesson: LessonId;
}
/**
 * Of which student.
 *
 */
export interface IntakeReadyPersonInput {
  student: StudentId;
}
/**
 * How one student stands before one lesson.
 *
 */
export interface IntakeReadyPersonOutput {
  student: StudentId;
  /**
   * Their visit.
   */
  visit: VisitId | null;
  /**
   * Their name.
   */
  name: string;
  /**
   * Which lesson; `None` for someone who has none yet.
   */
  lesson: LessonId | null;
  state: ReadyState;
  /**
   * Their age on the day, where the birth date is known.
   */
  age: number | null;
  /**
   * Whether they are a minor on the day, where it is known.
   */
  minor: boolean | null;
  /**
   * What is missing or has expired.
   */
  missing: ReadyItem[];
  /**
   * What to be careful of; nothing of it keeps anyone off court.
   */
  careful: string[];
  /**
   * That the coach went on all the same.
   */
  went_on: WentOn | null;
  /**
   * The answer in a sentence.
   */
  words: string;
}
/**
 * What was asked; the form and the record are the same.
 *
 */
export interface IntakeRecord {
  /**
   * Where and how long the student has played, and with whom.
   */
  experience: string;
  /**
   * When the student can usually come.
   */
  available: string;
  /**
   * How the student rates the own play.
   */
  level_said: string;
  /**
   * What the coach makes of it.
   */
  level_seen: string;
  /**
   * The racquet.
   */
  racquet: string;
  /**
   * The grip and its size.
   */
  grip: string;
  /**
   * Strings and their tension.
   */
  strings: string;
  /**
   * The day they were strung, as YYYY-MM-DD.
   */
  strung: string;
  /**
   * The eyewear's model.
   */
  eyewear: string;
  /**
   * The standard printed on it, as in ASTM F3164.
   */
  eyewear_standard: string;
  /**
   * The day the coach looked at it, as YYYY-MM-DD.
   */
  eyewear_seen: string;
  /**
   * The day injuries and restrictions were asked about, as YYYY-MM-DD; empty: never.
   */
  injuries_asked: string;
}
/**
 * A clearance to write down.
 *
 */
export interface IntakeRecordClearanceInput {
  student: StudentId;
  /**
   * After which injury; left out for one about exercise, after the readiness questions.
   */
  injury?: InjuryId | null;
  /**
   * Who wrote it, by full name.
   */
  by_whom: string;
  /**
   * What they are: physician, physiotherapist.
   */
  profession: string;
  /**
   * The day it was written, as YYYY-MM-DD.
   */
  day: string;
  /**
   * What it says, in its own words, with every limit.
   */
  says: string;
  /**
   * The last day it holds; empty where no end was written.
   */
  until?: string;
  /**
   * The paper.
   */
  scan?: ScanGiven | null;
  /**
   * Where no paper is kept here: where the coach read it, and who has it.
   */
  seen?: string;
}
/**
 * A clearance as recorded.
 *
 */
export interface IntakeRecordClearanceOutput {
  id: ClearanceId;
  student: StudentId;
  /**
   * After which injury.
   */
  injury: InjuryId | null;
  /**
   * Who wrote it.
   */
  by_whom: string;
  /**
   * What they are.
   */
  profession: string;
  day: Day;
  /**
   * What it says.
   */
  says: string;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * The paper.
   */
  scan: ScanNamed | null;
  /**
   * Where the coach read it; empty where the paper is kept here.
   */
  seen: string;
  /**
   * The day it was withdrawn.
   */
  withdrawn: Day | null;
  /**
   * Why.
   */
  why: string;
}
/**
 * A report to write.
 *
 */
export interface IntakeRecordIncidentInput {
  report: ReportInput;
}
/**
 * A report as kept.
 *
 */
export interface IntakeRecordIncidentOutput {
  id: IncidentId;
  /**
   * The name of whom it happened to.
   */
  name: string;
  report: Report;
  /**
   * The same, to be read.
   */
  lines: ReportLine[];
  day: Day;
  /**
   * The facility's name.
   */
  facility_name: string;
  recorded: Instant;
  /**
   * When it was signed.
   */
  signed: Instant | null;
  /**
   * The name it was signed with.
   */
  signature: string;
  /**
   * Its seal: SHA-256 over all of it.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept; `true` while it is not signed.
   */
  whole: boolean;
  /**
   * What was added since.
   */
  additions: Addition[];
}
/**
 * What was asked; the form and the record are the same.
 *
 */
export interface IntakeRecordInput {
  /**
   * Where and how long the student has played, and with whom.
   */
  experience?: string;
  /**
   * When the student can usually come.
   */
  available?: string;
  /**
   * How the student rates the own play.
   */
  level_said?: string;
  /**
   * What the coach makes of it.
   */
  level_seen?: string;
  /**
   * The racquet.
   */
  racquet?: string;
  /**
   * The grip and its size.
   */
  grip?: string;
  /**
   * Strings and their tension.
   */
  strings?: string;
  /**
   * The day they were strung, as YYYY-MM-DD.
   */
  strung?: string;
  /**
   * The eyewear's model.
   */
  eyewear?: string;
  /**
   * The standard printed on it, as in ASTM F3164.
   */
  eyewear_standard?: string;
  /**
   * The day the coach looked at it, as YYYY-MM-DD.
   */
  eyewear_seen?: string;
  /**
   * The day injuries and restrictions were asked about, as YYYY-MM-DD; empty: never.
   */
  injuries_asked?: string;
}
/**
 * A record to keep.
 *
 */
export interface IntakeSetInput {
  student: StudentId;
  record: IntakeRecordInput;
  /**
   * Whom to call; left out while not asked.
   */
  emergency?: EmergencyContactInput | null;
}
/**
 * The coach's rules for minors, as the sport's body, the federation or local law has them; the form
 * and the record are the same.
 *
 */
export interface IntakeSetMinorRulesInput {
  /**
   * From this age on one decides alone. 18 in most places; local law says.
   */
  majority?: number;
  /**
   * Whether a lesson of a minor must be on a court that can be seen from outside.
   */
  observable?: boolean;
  /**
   * Whether another adult must be there.
   */
  adult_present?: boolean;
  /**
   * After so many months a guardian's consent to lessons is asked for again; 0: never.
   */
  consent_months?: number;
  /**
   * Whether a second adult stands on every message to a minor.
   */
  second_adult?: boolean;
  /**
   * Where these rules are from.
   */
  source?: string;
  /**
   * The day the coach read them, as YYYY-MM-DD.
   */
  seen?: string;
}
/**
 * The coach's rules for minors, as the sport's body, the federation or local law has them; the form
 * and the record are the same.
 *
 */
export interface IntakeSetMinorRulesOutput {
  /**
   * From this age on one decides alone. 18 in most places; local law says.
   */
  majority: number;
  /**
   * Whether a lesson of a minor must be on a court that can be seen from outside.
   */
  observable: boolean;
  /**
   * Whether another adult must be there.
   */
  adult_present: boolean;
  /**
   * After so many months a guardian's consent to lessons is asked for again; 0: never.
   */
  consent_months: number;
  /**
   * Whether a second adult stands on every message to a minor.
   */
  second_adult: boolean;
  /**
   * Where these rules are from.
   */
  source: string;
  /**
   * The day the coach read them, as YYYY-MM-DD.
   */
  seen: string;
}
/**
 * The record as kept.
 *
 */
export interface IntakeSetOutput {
  student: StudentId;
  /**
   * The day it was last gone through; `None` while never.
   */
  asked: Day | null;
  record: IntakeRecord;
  /**
   * Whom to call.
   */
  emergency: EmergencyContact | null;
}
/**
 * A policy to write down.
 *
 */
export interface IntakeSetPolicyInput {
  facility: FacilityId;
  policy: PolicyInput;
}
/**
 * A facility's own policy and rules; the form and the record are the same.
 *
 */
export interface PolicyInput {
  /**
   * The name of its policy, waiver or rules.
   */
  name?: string;
  /**
   * Where it can be read.
   */
  link?: string;
  /**
   * The day the coach read it, as YYYY-MM-DD.
   */
  seen?: string;
  /**
   * Whether each player signs the facility's own form.
   */
  form_needed?: boolean;
  /**
   * Where it is signed, and where signed ones are kept.
   */
  form_where?: string;
  /**
   * Whether a minor's lesson must be on a court that can be seen from outside.
   */
  observable?: boolean;
  /**
   * Whether another adult has to be there for a minor's lesson.
   */
  adult_present?: boolean;
  /**
   * The age from which one may be on court; left out where nothing was said.
   */
  youngest?: number | null;
  /**
   * What else it says about safety and minors.
   */
  rules?: string;
}
/**
 * A facility's own policy and rules; the form and the record are the same.
 *
 */
export interface IntakeSetPolicyOutput {
  /**
   * The name of its policy, waiver or rules.
   */
  name: string;
  /**
   * Where it can be read.
   */
  link: string;
  /**
   * The day the coach read it, as YYYY-MM-DD.
   */
  seen: string;
  /**
   * Whether each player signs the facility's own form.
   */
  form_needed: boolean;
  /**
   * Where it is signed, and where signed ones are kept.
   */
  form_where: string;
  /**
   * Whether a minor's lesson must be on a court that can be seen from outside.
   */
  observable: boolean;
  /**
   * Whether another adult has to be there for a minor's lesson.
   */
  adult_present: boolean;
  /**
   * The age from which one may be on court; left out where nothing was said.
   */
  youngest: number | null;
  /**
   * What else it says about safety and minors.
   */
  rules: string;
}
/**
 * Of which student.
 *
 */
export interface IntakeShowInput {
  student: StudentId;
}
/**
 * The record as kept.
 *
 */
export interface IntakeShowOutput {
  student: StudentId;
  /**
   * The day it was last gone through; `None` while never.
   */
  asked: Day | null;
  record: IntakeRecord;
  /**
   * Whom to call.
   */
  emergency: EmergencyContact | null;
}
/**
 * A facility's form that a student signed.
 *
 */
export interface IntakeSignFormInput {
  student: StudentId;
  facility: FacilityId;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  signed?: string;
  /**
   * The last day it holds; empty where no end was told.
   */
  until?: string;
  /**
   * Where the signed form is.
   */
  kept?: string;
  /**
   * A scan of it.
   */
  scan?: ScanGiven | null;
}
/**
 * A signed form as kept.
 *
 */
export interface IntakeSignFormOutput {
  id: FormId;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  signed: Day;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * Where the signed form is.
   */
  kept: string;
  /**
   * A scan of it.
   */
  scan: ScanNamed | null;
}
/**
 * A report to sign.
 *
 */
export interface IntakeSignIncidentInput {
  incident: IncidentId;
  /**
   * The author's name, typed once more.
   */
  signature: string;
}
/**
 * A report as kept.
 *
 */
export interface IntakeSignIncidentOutput {
  id: IncidentId;
  /**
   * The name of whom it happened to.
   */
  name: string;
  report: Report;
  /**
   * The same, to be read.
   */
  lines: ReportLine[];
  day: Day;
  /**
   * The facility's name.
   */
  facility_name: string;
  recorded: Instant;
  /**
   * When it was signed.
   */
  signed: Instant | null;
  /**
   * The name it was signed with.
   */
  signature: string;
  /**
   * Its seal: SHA-256 over all of it.
   */
  seal: string;
  /**
   * Whether the seal fits what is kept; `true` while it is not signed.
   */
  whole: boolean;
  /**
   * What was added since.
   */
  additions: Addition[];
}
/**
 * Answers to take.
 *
 */
export interface IntakeTakeAnswersInput {
  student: StudentId;
  /**
   * The same file.
   */
  content: string;
  /**
   * The fields whose answers are taken.
   */
  fields: string[];
}
/**
 * What a file says.
 *
 */
export interface IntakeTakeAnswersOutput {
  student: StudentId;
  /**
   * The answers that differ from what is kept.
   */
  answers: AnswerShown[];
  /**
   * How many say what is kept already.
   */
  same: number;
}
/**
 * A clearance that no longer counts.
 *
 */
export interface IntakeWithdrawClearanceInput {
  clearance: ClearanceId;
  /**
   * Why.
   */
  why: string;
}
/**
 * A clearance as recorded.
 *
 */
export interface IntakeWithdrawClearanceOutput {
  id: ClearanceId;
  student: StudentId;
  /**
   * After which injury.
   */
  injury: InjuryId | null;
  /**
   * Who wrote it.
   */
  by_whom: string;
  /**
   * What they are.
   */
  profession: string;
  day: Day;
  /**
   * What it says.
   */
  says: string;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * The paper.
   */
  scan: ScanNamed | null;
  /**
   * Where the coach read it; empty where the paper is kept here.
   */
  seen: string;
  /**
   * The day it was withdrawn.
   */
  withdrawn: Day | null;
  /**
   * Why.
   */
  why: string;
}
/**
 * A consent to withdraw.
 *
 */
export interface IntakeWithdrawConsentInput {
  consent: ConsentId;
  /**
   * Who withdraws it.
   */
  by_whom: string;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day?: string;
}
/**
 * An answer as kept.
 *
 */
export interface IntakeWithdrawConsentOutput {
  id: ConsentId;
  /**
   * Whose.
   */
  student: StudentId | null;
  /**
   * The guest.
   */
  guest: string | null;
  kind: ConsentKind;
  /**
   * Whether it was given.
   */
  given: boolean;
  /**
   * Who answered.
   */
  name: string;
  relation: Speaks;
  /**
   * What the guardian is to the student.
   */
  as_what: string;
  day: Day;
  how: OnWhat;
  /**
   * The paper.
   */
  scan: ScanNamed | null;
  /**
   * The last day it holds.
   */
  until: Day | null;
  /**
   * The day it was withdrawn.
   */
  withdrawn: Day | null;
  /**
   * Who withdrew it.
   */
  by_whom: string;
}
/**
 * What is taken off the whole, or put on it, as kept.
 *
 */
export interface InvoiceExtra {
  /**
   * Whether it is taken off; otherwise it is put on.
   */
  takes_off: boolean;
  /**
   * Why, as printed.
   */
  words: string;
  /**
   * How much, a decimal, without or with tax as the prices are.
   */
  amount: string;
  /**
   * The category of tax; `None` while not set.
   */
  category: Category | null;
  /**
   * The rate in percent; empty while not set.
   */
  rate: string;
  /**
   * Why no tax is charged.
   */
  why: string;
}
/**
 * Something that keeps a draft from being issued.
 *
 */
export interface InvoiceLack {
  /**
   * What, in words.
   */
  words: string;
  lack_in: LackIn;
}
/**
 * A line as kept.
 *
 */
export interface InvoiceLine {
  id: InvoiceLineId;
  what: What;
  /**
   * In words.
   */
  words: string;
  /**
   * The day of supply; `None`: that of the invoice.
   */
  day: Day | null;
  /**
   * Where.
   */
  facility: FacilityId | null;
  /**
   * How many, a decimal.
   */
  quantity: string;
  /**
   * What one costs, a decimal.
   */
  price: string;
  /**
   * What is taken off, a decimal.
   */
  allowance: string;
  /**
   * Why.
   */
  reason: string;
  /**
   * The category of tax; `None` while not set.
   */
  category: Category | null;
  /**
   * The rate in percent; empty while not set.
   */
  rate: string;
  /**
   * Why no tax is charged.
   */
  why: string;
  /**
   * The package that it sells.
   */
  package: PackageId | null;
  /**
   * Of a credit note: lessons given back.
   */
  lessons: number | null;
  /**
   * Of a credit note: the line it corrects.
   */
  corrects: InvoiceLineId | null;
  /**
   * What it comes to, a decimal.
   */
  total: string;
  /**
   * What of it was credited since, a decimal.
   */
  credited: string;
}
/**
 * A reminder as it was written.
 *
 */
export interface InvoiceReminder {
  id: ReminderId;
  /**
   * The first, the second and so on.
   */
  place: number;
  day: Day;
  due: Day;
  /**
   * What was open, a decimal.
   */
  open: string;
  /**
   * The interest it told of, a decimal; 0 for none.
   */
  interest: string;
}
/**
 * The sums of an invoice, as decimals.
 *
 */
export interface InvoiceSums {
  /**
   * The lines together, as their prices are.
   */
  lines: string;
  /**
   * Without tax.
   */
  net: string;
  /**
   * Tax.
   */
  tax: string;
  /**
   * With tax.
   */
  gross: string;
  /**
   * What the cash step adds or takes off.
   */
  rounding: string;
  /**
   * What is to be paid, all together.
   */
  payable: string;
  /**
   * Tax by category and rate.
   */
  taxes: DocTax[];
}
/**
 * A draft to change.
 *
 */
export interface InvoicesChangeInput {
  invoice: InvoiceId;
  /**
   * A remark above the lines.
   */
  words?: string;
  /**
   * Whether prices are without or with tax; left out to leave it.
   */
  prices?: Prices | null;
  /**
   * The cash step to which what is due is rounded, a decimal; empty for none.
   */
  step?: string;
  /**
   * All lines: one that is left out goes.
   */
  lines: LineForm[];
  /**
   * All that is taken off the whole, or put on it; left out to leave it.
   */
  extras?: ExtraForm[] | null;
}
/**
 * A line as typed.
 *
 */
export interface LineForm {
  /**
   * The line to change; left out for a new one.
   */
  id?: InvoiceLineId | null;
  what: What;
  /**
   * In words.
   */
  words: string;
  /**
   * The day of supply, as YYYY-MM-DD; empty: that of the invoice.
   */
  day?: string;
  /**
   * Where.
   */
  facility?: FacilityId | null;
  /**
   * How many, a decimal above 0; empty for one.
   */
  quantity?: string;
  /**
   * What one costs, a decimal.
   */
  price: string;
  /**
   * What is taken off, a decimal; empty for nothing.
   */
  allowance?: string;
  /**
   * Why.
   */
  reason?: string;
  /**
   * The tax; left out for what the coach set for this kind of line.
   */
  tax?: LineTax | null;
}
/**
 * An invoice or credit note.
 *
 */
export interface InvoicesChangeOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * A credit note to issue.
 *
 */
export interface InvoicesCreditInput {
  invoice: InvoiceId;
  /**
   * Why, as it is to stand on it.
   */
  reason: string;
  /**
   * Which lines; none for all that is left of all.
   */
  lines?: CreditLine[];
}
/**
 * An invoice or credit note.
 *
 */
export interface InvoicesCreditOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * Which invoice.
 *
 */
export interface InvoicesDiscardInput {
  invoice: InvoiceId;
}
/**
 * An input with nothing in it.
 *
 */
export interface InvoicesDiscardOutput {}
/**
 * An invoice to begin.
 *
 */
export interface InvoicesDraftInput {
  payer: PayerId;
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * The lines.
   */
  lines?: LineForm[];
}
/**
 * An invoice or credit note.
 *
 */
export interface InvoicesDraftOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * A draft that may be issued to be paid in parts.
 *
 */
export interface InvoicesInPartsInput {
  invoice: InvoiceId;
  /**
   * The day of issue, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  /**
   * The last day to pay; empty: as the terms say.
   */
  due?: string;
}
/**
 * An invoice to issue.
 *
 */
export interface InvoicesIssueInput {
  invoice: InvoiceId;
  /**
   * The day of issue, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  /**
   * The last day to pay; empty: as the terms say.
   */
  due?: string;
  /**
   * Whether what the payer has paid already is used for it.
   */
  use_credit?: boolean;
  /**
   * Whether it is to be paid in parts, as the terms say.
   */
  in_parts?: boolean;
}
/**
 * An invoice or credit note.
 *
 */
export interface InvoicesIssueOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * Which invoices.
 *
 */
export interface InvoicesListInput {
  /**
   * Of a payer; left out for everyone\u{2019}s.
   */
  payer?: PayerId | null;
  /**
   * Only those of which something is to be paid, the longest due first.
   */
  open?: boolean;
}
/**
 * Invoices.
 *
 */
export interface InvoicesListOutput {
  /**
   * Drafts first, then the newest; or the longest due first.
   */
  invoices: InvoiceListed[];
}
/**
 * A reminder to write.
 *
 */
export interface InvoicesRemindInput {
  invoice: InvoiceId;
  /**
   * The new last day to pay, as YYYY-MM-DD; empty: the days to pay of the terms from today.
   */
  due?: string;
  /**
   * Words of the coach\u{2019}s own; empty for none.
   */
  words?: string;
  /**
   * Whether the interest that the terms set is told of.
   */
  with_interest?: boolean;
}
/**
 * An invoice or credit note.
 *
 */
export interface InvoicesRemindOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * An input with nothing in it.
 *
 */
export interface InvoicesSellerInput {}
/**
 * The issuer of invoices; the form and the record are the same.
 *
 */
export interface InvoicesSellerOutput {
  /**
   * Full name, or the business\u{2019}s.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1.
   */
  country: string;
  /**
   * The number for value added tax; empty without one.
   */
  vat_id: string;
  /**
   * The tax office\u{2019}s number; empty without one.
   */
  tax_id: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * Telephone number.
   */
  phone: string;
  /**
   * Whose account it is, if another name.
   */
  account_name: string;
  /**
   * The account, an IBAN (ISO 13616), or the number as banks there write it.
   */
  account: string;
  /**
   * The bank, by its BIC (ISO 9362), or by name.
   */
  bank: string;
  /**
   * Words at the end of every invoice.
   */
  words: string;
  prices: Prices;
  /**
   * What numbers begin with, as in "INV"; empty for nothing.
   */
  series: string;
}
/**
 * The issuer of invoices; the form and the record are the same.
 *
 */
export interface InvoicesSetSellerInput {
  /**
   * Full name, or the business\u{2019}s.
   */
  name?: string;
  /**
   * Postal address, several lines.
   */
  address?: string;
  /**
   * The country, two letters of ISO 3166-1.
   */
  country?: string;
  /**
   * The number for value added tax; empty without one.
   */
  vat_id?: string;
  /**
   * The tax office\u{2019}s number; empty without one.
   */
  tax_id?: string;
  /**
   * E-mail address.
   */
  email?: string;
  /**
   * Telephone number.
   */
  phone?: string;
  /**
   * Whose account it is, if another name.
   */
  account_name?: string;
  /**
   * The account, an IBAN (ISO 13616), or the number as banks there write it.
   */
  account?: string;
  /**
   * The bank, by its BIC (ISO 9362), or by name.
   */
  bank?: string;
  /**
   * Words at the end of every invoice.
   */
  words?: string;
  prices?: Prices;
  /**
   * What numbers begin with, as in "INV"; empty for nothing.
   */
  series?: string;
}
/**
 * The issuer of invoices; the form and the record are the same.
 *
 */
export interface InvoicesSetSellerOutput {
  /**
   * Full name, or the business\u{2019}s.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1.
   */
  country: string;
  /**
   * The number for value added tax; empty without one.
   */
  vat_id: string;
  /**
   * The tax office\u{2019}s number; empty without one.
   */
  tax_id: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * Telephone number.
   */
  phone: string;
  /**
   * Whose account it is, if another name.
   */
  account_name: string;
  /**
   * The account, an IBAN (ISO 13616), or the number as banks there write it.
   */
  account: string;
  /**
   * The bank, by its BIC (ISO 9362), or by name.
   */
  bank: string;
  /**
   * Words at the end of every invoice.
   */
  words: string;
  prices: Prices;
  /**
   * What numbers begin with, as in "INV"; empty for nothing.
   */
  series: string;
}
/**
 * Which invoice.
 *
 */
export interface InvoicesShowInput {
  invoice: InvoiceId;
}
/**
 * An invoice or credit note.
 *
 */
export interface InvoicesShowOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * Which invoice.
 *
 */
export interface InvoicesWouldRemindInput {
  invoice: InvoiceId;
}
/**
 * What a reminder written today would say.
 *
 */
export interface InvoicesWouldRemindOutput {
  /**
   * How many days late it is.
   */
  late: number;
  due: Day;
  /**
   * The interest until today, a decimal; empty where the terms set none.
   */
  interest: string;
  /**
   * How it is worked out; empty without interest.
   */
  worked: string;
}
/**
 * An issued letter in a list.
 *
 */
export interface IssuedLine {
  letter: LetterId;
  at: Instant;
  /**
   * SHA-256 of its document.
   */
  sha256: string;
}
/**
 * How much history.
 *
 */
export interface JournalNewestInput {
  /**
   * How many acts at most.
   */
  most?: number;
}
/**
 * An act to undo.
 *
 */
export interface JournalUndoInput {
  act: ActId;
}
/**
 * What was undone.
 *
 */
export interface JournalUndoOutput {
  /**
   * The label of the act that was taken back.
   */
  label: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface KeepingDueInput {}
/**
 * For how many months each kind of thing is kept; the form and the record are the same. `None`: not
 * said.
 *
 */
export interface KeepingSetSpansInput {
  /**
   * Someone who asked and never came, from the day they asked.
   */
  enquiry?: number | null;
  /**
   * Health answers, from the last day the person came or answered.
   */
  health?: number | null;
  /**
   * Incident reports, from the day it happened.
   */
  report?: number | null;
  /**
   * Everything about a person, from the last day they came.
   */
  person?: number | null;
}
/**
 * For how many months each kind of thing is kept; the form and the record are the same. `None`: not
 * said.
 *
 */
export interface KeepingSetSpansOutput {
  /**
   * Someone who asked and never came, from the day they asked.
   */
  enquiry: number | null;
  /**
   * Health answers, from the last day the person came or answered.
   */
  health: number | null;
  /**
   * Incident reports, from the day it happened.
   */
  report: number | null;
  /**
   * Everything about a person, from the last day they came.
   */
  person: number | null;
}
/**
 * An input with nothing in it.
 *
 */
export interface KeepingSpansInput {}
/**
 * For how many months each kind of thing is kept; the form and the record are the same. `None`: not
 * said.
 *
 */
export interface KeepingSpansOutput {
  /**
   * Someone who asked and never came, from the day they asked.
   */
  enquiry: number | null;
  /**
   * Health answers, from the last day the person came or answered.
   */
  health: number | null;
  /**
   * Incident reports, from the day it happened.
   */
  report: number | null;
  /**
   * Everything about a person, from the last day they came.
   */
  person: number | null;
}
/**
 * One kind of things kept about a person.
 *
 */
export interface KindKept {
  /**
   * How many there are.
   */
  many: number;
  /**
   * "12 lessons".
   */
  words: string;
  /**
   * Why they are kept.
   */
  why: string;
}
/**
 * What is played instead of a last set: exactly one of the two.
 *
 */
export interface LastSet {
  /**
   * A set by other rules.
   */
  set?: SetRule | null;
  /**
   * One long tiebreak in place of the set.
   */
  tiebreak?: PackGame | null;
}
/**
 * How a set is won.
 *
 */
export interface SetRule {
  /**
   * The games that win it.
   */
  games: number;
  /**
   * The lead it takes.
   */
  win_by: number;
  /**
   * The tiebreak that ends a level set; left out where the set goes on until the lead is there.
   */
  tiebreak?: SetTiebreak | null;
}
/**
 * The tiebreak of a set. Who wins it wins the set by one game.
 *
 */
export interface SetTiebreak {
  /**
   * The games each side has when it is played.
   */
  at: number;
  /**
   * The points that win it.
   */
  to: number;
  /**
   * The lead it takes.
   */
  win_by: number;
}
/**
 * When one game, or one tiebreak, is won.
 *
 */
export interface PackGame {
  /**
   * The points that win it.
   */
  to: number;
  /**
   * The lead it takes.
   */
  win_by: number;
}
/**
 * A lesson as stored.
 *
 */
export interface Lesson {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * A line of a plan.
 *
 */
export interface LessonLine {
  /**
   * How long.
   */
  minutes: number;
  /**
   * A drill of the pack or of the coach's own; empty for none.
   */
  drill: string;
  /**
   * The goal it serves, if any.
   */
  goal: GoalId | null;
  /**
   * What is done, in words.
   */
  words: string;
}
/**
 * A line of a plan.
 *
 */
export interface LessonLineInput {
  /**
   * How long.
   */
  minutes: number;
  /**
   * A drill of the pack or of the coach's own; empty for none.
   */
  drill?: string;
  /**
   * The goal it serves, if any.
   */
  goal?: GoalId | null;
  /**
   * What is done, in words.
   */
  words?: string;
}
/**
 * A lesson as it stands on a day.
 *
 */
export interface LessonOn {
  lesson: LessonId;
  visit: VisitId;
  /**
   * Everyone in it, in words.
   */
  names: string;
  /**
   * In a person's row, who else is in it, in words; empty when nobody is.
   */
  with: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its length in minutes: as taught, where it was cut short.
   */
  minutes: number;
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone.
   */
  zone: string;
  state: LessonState;
  /**
   * What came of the last offer of the visit that names it at this time; left out when none does.
   */
  offer: OfferState | null;
  /**
   * Whether its visit was called off, so that it is to be called off as well.
   */
  visit_off: boolean;
}
/**
 * A lesson that did not take place.
 *
 */
export interface LessonsCallOffInput {
  lesson: LessonId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsCallOffOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * A lesson to move.
 *
 */
export interface LessonsChangeInput {
  lesson: LessonId;
  facility: FacilityId;
  /**
   * The court, once known.
   */
  court?: CourtId | null;
  /**
   * The day, as YYYY-MM-DD.
   */
  day: string;
  /**
   * When it begins on the facility's clock, as HH:MM.
   */
  starts: string;
  which?: WhichHour;
  /**
   * Its length in minutes.
   */
  minutes: number;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsChangeOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * A time to look at.
 *
 */
export interface LessonsClashesInput {
  /**
   * Who would come.
   */
  students: StudentId[];
  facility: FacilityId;
  /**
   * The court, once known.
   */
  court?: CourtId | null;
  day: Day;
  starts: Time;
  /**
   * Its length in minutes.
   */
  minutes: number;
  /**
   * The lesson that is being moved, so that it does not clash with itself.
   */
  itself?: LessonId | null;
}
/**
 * A lesson that ended early.
 *
 */
export interface LessonsCutShortInput {
  lesson: LessonId;
  /**
   * Minutes taught.
   */
  given: number;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsCutShortOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * A card to type in.
 *
 */
export interface LessonsEnterCardInput {
  lesson: LessonId;
  /**
   * Its rows.
   */
  rows: CardRow[];
}
/**
 * What came of a card.
 *
 */
export interface LessonsEnterCardOutput {
  /**
   * How many blocks were entered.
   */
  blocks: number;
}
/**
 * Which lesson.
 *
 */
export interface LessonsGiveInput {
  lesson: LessonId;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsGiveOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * Lines to keep under a name; one of that name is replaced.
 *
 */
export interface LessonsKeepTemplateInput {
  /**
   * Its name.
   */
  name: string;
  /**
   * Its lines.
   */
  lines: LessonLineInput[];
}
/**
 * A template: lines without their goals, which are one student's.
 *
 */
export interface Template {
  id: TemplateId;
  /**
   * Its name.
   */
  name: string;
  /**
   * Its lines.
   */
  lines: LessonLine[];
}
/**
 * Which lessons to list.
 *
 */
export interface LessonsListInput {
  /**
   * Of this visit only.
   */
  visit?: VisitId | null;
  /**
   * On this day or later.
   */
  from?: Day | null;
  /**
   * On this day or earlier.
   */
  to?: Day | null;
}
/**
 * A lesson that did not take place.
 *
 */
export interface LessonsMissInput {
  lesson: LessonId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsMissOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * Lessons that found no place.
 *
 */
export interface LessonsMissing {
  visit: VisitId;
  /**
   * Who shares them, by their visits.
   */
  with: VisitId[];
  /**
   * Their names, as in "Ana and Ben".
   */
  name: string;
  /**
   * How many.
   */
  lessons: number;
  /**
   * What stands in their way, a sentence for each day.
   */
  why: string[];
}
/**
 * A lesson note.
 *
 */
export interface LessonsNoteInput {
  lesson: LessonId;
  /**
   * What was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed?: string;
  /**
   * What is next.
   */
  next?: string;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsNoteOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * A lesson to plan.
 *
 */
export interface LessonsPlanInput {
  /**
   * The visits it is part of: one for each student.
   */
  visits: VisitId[];
  facility: FacilityId;
  /**
   * The court, once known.
   */
  court?: CourtId | null;
  /**
   * The day, as YYYY-MM-DD.
   */
  day: string;
  /**
   * When it begins on the facility's clock, as HH:MM.
   */
  starts: string;
  which?: WhichHour;
  /**
   * Its length in minutes.
   */
  minutes: number;
}
/**
 * Which lesson.
 *
 */
export interface LessonsPlanLinesInput {
  lesson: LessonId;
}
/**
 * A lesson's plan as it stands.
 *
 */
export interface LessonsPlanLinesOutput {
  lesson: LessonId;
  /**
   * Its lines, in order.
   */
  lines: LessonLine[];
  /**
   * All minutes of the lines.
   */
  minutes: number;
  /**
   * A sentence where they are not the lesson's; empty where they are, or there are no lines.
   */
  differs: string;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsPlanOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * Which lesson.
 *
 */
export interface LessonsProposePlanInput {
  lesson: LessonId;
}
/**
 * A lesson's plan as it stands.
 *
 */
export interface LessonsProposePlanOutput {
  lesson: LessonId;
  /**
   * Its lines, in order.
   */
  lines: LessonLine[];
  /**
   * All minutes of the lines.
   */
  minutes: number;
  /**
   * A sentence where they are not the lesson's; empty where they are, or there are no lines.
   */
  differs: string;
}
/**
 * What a student said of a lesson.
 *
 */
export interface LessonsRateEffortInput {
  lesson: LessonId;
  student: StudentId;
  /**
   * 0 (rest) to 10 (maximal); left out to take the rating back.
   */
  effort?: number | null;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsRateEffortOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * Lines to set.
 *
 */
export interface LessonsSetPlanLinesInput {
  lesson: LessonId;
  /**
   * Its lines, in place of those it had.
   */
  lines: LessonLineInput[];
}
/**
 * A lesson's plan as it stands.
 *
 */
export interface LessonsSetPlanLinesOutput {
  lesson: LessonId;
  /**
   * Its lines, in order.
   */
  lines: LessonLine[];
  /**
   * All minutes of the lines.
   */
  minutes: number;
  /**
   * A sentence where they are not the lesson's; empty where they are, or there are no lines.
   */
  differs: string;
}
/**
 * Which lesson.
 *
 */
export interface LessonsShowInput {
  lesson: LessonId;
}
/**
 * A lesson as stored.
 *
 */
export interface LessonsShowOutput {
  id: LessonId;
  /**
   * Who comes.
   */
  students: Attending[];
  facility: FacilityId;
  /**
   * The facility's name.
   */
  place: string;
  /**
   * The court, once known.
   */
  court: CourtId | null;
  /**
   * Its name, or empty.
   */
  court_name: string;
  /**
   * The facility's zone: the times below are on its clock.
   */
  zone: string;
  day: Day;
  starts: Time;
  ends: Time;
  which: WhichHour;
  /**
   * Its planned length.
   */
  minutes: number;
  state: LessonState;
  /**
   * Minutes taught, when cut short.
   */
  given: number | null;
  /**
   * Why cut short, called off or missed.
   */
  reason: string;
  /**
   * The lesson note: what was done.
   */
  done: string;
  /**
   * The cue that landed.
   */
  landed: string;
  /**
   * What is next.
   */
  next: string;
}
/**
 * Every template.
 *
 */
export interface LessonsTemplatesInput {}
/**
 * A template to use at a lesson.
 *
 */
export interface LessonsUseTemplateInput {
  lesson: LessonId;
  template: TemplateId;
}
/**
 * A lesson's plan as it stands.
 *
 */
export interface LessonsUseTemplateOutput {
  lesson: LessonId;
  /**
   * Its lines, in order.
   */
  lines: LessonLine[];
  /**
   * All minutes of the lines.
   */
  minutes: number;
  /**
   * A sentence where they are not the lesson's; empty where they are, or there are no lines.
   */
  differs: string;
}
/**
 * A line in the list.
 *
 */
export interface LetterLine {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  first_day: Day;
  last_day: Day;
  state: LetterState;
  /**
   * The issued letter.
   */
  letter: LetterId | null;
  /**
   * When it was issued.
   */
  at: Instant | null;
}
/**
 * The language of the letters of a visit's student.
 *
 */
export interface LettersChooseLanguageInput {
  visit: VisitId;
  language: Language;
}
/**
 * A letter of a visit as it stands.
 *
 */
export interface LettersChooseLanguageOutput {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * When the visit was.
   */
  when: string;
  language: Language;
  /**
   * Its parts.
   */
  parts: Part[];
  pages: Pages;
  /**
   * What to look at before it is issued, in words.
   */
  warnings: string[];
  /**
   * Letters issued for this visit, newest first.
   */
  issued: IssuedLine[];
}
/**
 * A part as it stands.
 *
 */
export interface Part {
  key: PartKey;
  /**
   * Its heading; empty for the opening and the closing.
   */
  heading: string;
  /**
   * Its words: paragraphs parted by an empty line.
   */
  text: string;
  /**
   * What the program's own words rest on, one fact a line.
   */
  from: string[];
  /**
   * Whether the words are the coach's own.
   */
  edited: boolean;
  /**
   * Whether the record changed since the coach wrote these words.
   */
  outdated: boolean;
  /**
   * Whether it is left out of the letter.
   */
  left_out: boolean;
}
/**
 * A document whose every position is decided. Lengths are points, y grows downwards.
 *
 */
export interface Pages {
  /**
   * Its language (BCP 47).
   */
  language: string;
  /**
   * Who issues it.
   */
  author: string;
  /**
   * When it was issued.
   */
  issued: string;
  /**
   * Width of every page.
   */
  width: number;
  /**
   * Height of every page.
   */
  height: number;
  /**
   * The fonts in use; a text item names its font by place in this list. A record that must be
   * reproducible keeps these.
   */
  fonts: FontUsed[];
  /**
   * The meaning of the items, in reading order; an item names its element by place here.
   */
  elements: SheetElement[];
  /**
   * Title and headings, by position.
   */
  bookmarks: Bookmark[];
  /**
   * The pages.
   */
  pages: Page[];
  /**
   * What no font could write, for the coach to see before issuing.
   */
  missing: Missing[];
  /**
   * The document's name.
   */
  title: string;
}
/**
 * What a part of the document is, for a screen reader.
 *
 */
export interface SheetElement {
  tag: SheetTag;
  /**
   * The element it is inside of, by place in [`Pages::elements`]; `None` is the document.
   */
  inside: number | null;
  /**
   * What a figure shows, in words.
   */
  alt: string | null;
  /**
   * Where a figure stands.
   */
  frame: SheetFrame | null;
}
/**
 * A box on a page.
 *
 */
export interface SheetFrame {
  /**
   * The page, counted from 0.
   */
  page: number;
  /**
   * Left edge.
   */
  x: number;
  /**
   * Top edge.
   */
  y: number;
  /**
   * Width.
   */
  width: number;
  /**
   * Height.
   */
  height: number;
}
/**
 * One page.
 *
 */
export interface Page {
  /**
   * What is drawn, in reading order.
   */
  items: PageItem[];
}
/**
 * A drawn edge.
 *
 */
export interface Stroke {
  ink: Ink;
  /**
   * Thickness in points.
   */
  width: number;
}
/**
 * Letters no font at hand can write; a question mark stands in their place.
 *
 */
export interface Missing {
  /**
   * The letter with its marks, as it was given.
   */
  cluster: string;
  place: SheetPlace;
}
/**
 * Which visit's letter.
 *
 */
export interface LettersComposeAnewInput {
  visit: VisitId;
}
/**
 * A letter of a visit as it stands.
 *
 */
export interface LettersComposeAnewOutput {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * When the visit was.
   */
  when: string;
  language: Language;
  /**
   * Its parts.
   */
  parts: Part[];
  pages: Pages;
  /**
   * What to look at before it is issued, in words.
   */
  warnings: string[];
  /**
   * Letters issued for this visit, newest first.
   */
  issued: IssuedLine[];
}
/**
 * Which visit's letter.
 *
 */
export interface LettersDraftInput {
  visit: VisitId;
}
/**
 * A letter of a visit as it stands.
 *
 */
export interface LettersDraftOutput {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * When the visit was.
   */
  when: string;
  language: Language;
  /**
   * Its parts.
   */
  parts: Part[];
  pages: Pages;
  /**
   * What to look at before it is issued, in words.
   */
  warnings: string[];
  /**
   * Letters issued for this visit, newest first.
   */
  issued: IssuedLine[];
}
/**
 * A change to one part.
 *
 */
export interface LettersEditInput {
  visit: VisitId;
  part: PartKey;
  /**
   * The coach's words; left out to have the program's again.
   */
  text?: string | null;
  /**
   * Leave the part out of the letter.
   */
  left_out?: boolean;
}
/**
 * A letter of a visit as it stands.
 *
 */
export interface LettersEditOutput {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * When the visit was.
   */
  when: string;
  language: Language;
  /**
   * Its parts.
   */
  parts: Part[];
  pages: Pages;
  /**
   * What to look at before it is issued, in words.
   */
  warnings: string[];
  /**
   * Letters issued for this visit, newest first.
   */
  issued: IssuedLine[];
}
/**
 * Which visit's letter.
 *
 */
export interface LettersIssueInput {
  visit: VisitId;
}
/**
 * An issued letter.
 *
 */
export interface LettersIssueOutput {
  letter: LetterId;
  visit: VisitId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * When the visit was.
   */
  when: string;
  at: Instant;
  /**
   * SHA-256 of its document.
   */
  sha256: string;
  /**
   * Its size in bytes.
   */
  bytes: number;
  /**
   * Fonts found on the machine that it used.
   */
  fonts: FontUsed[];
  pages: Pages;
}
/**
 * Which letters.
 *
 */
export interface LettersListInput {
  /**
   * Of this student only.
   */
  student?: StudentId | null;
  /**
   * Only issued ones, or only those still to write; left out for both.
   */
  issued?: boolean | null;
  /**
   * Only of visits that ended on this day or later.
   */
  from?: Day | null;
  /**
   * Only of visits that ended on this day or earlier.
   */
  to?: Day | null;
  /**
   * How many at most; 0 means all.
   */
  most?: number;
}
/**
 * Which issued letter.
 *
 */
export interface LettersShowInput {
  letter: LetterId;
}
/**
 * An issued letter.
 *
 */
export interface LettersShowOutput {
  letter: LetterId;
  visit: VisitId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * When the visit was.
   */
  when: string;
  at: Instant;
  /**
   * SHA-256 of its document.
   */
  sha256: string;
  /**
   * Its size in bytes.
   */
  bytes: number;
  /**
   * Fonts found on the machine that it used.
   */
  fonts: FontUsed[];
  pages: Pages;
}
/**
 * A scale of levels with written anchors.
 *
 */
export interface LevelScale {
  /**
   * The name of the scale.
   */
  name: string;
  /**
   * Its levels, from 0 up.
   */
  anchors: PackAnchor[];
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * What one level means.
 *
 */
export interface PackAnchor {
  /**
   * The level, 0 to 4.
   */
  level: number;
  /**
   * Its name.
   */
  name: string;
  /**
   * What is seen at this level.
   */
  words: string;
}
/**
 * The load of a run of days, usually a week, days of rest counted as 0.
 *
 */
export interface Load {
  /**
   * The sum of the days.
   */
  total: number;
  /**
   * The mean of the days.
   */
  mean: number;
  /**
   * The sample standard deviation (over n − 1); null for one day.
   */
  sd: number | null;
  /**
   * Mean ÷ standard deviation: high when every day is alike; null where all days are the same.
   */
  monotony: number | null;
  /**
   * Total × monotony; null where monotony is.
   */
  strain: number | null;
}
/**
 * A day of the visit.
 *
 */
export interface LoadDay {
  day: Day;
  /**
   * Minutes taught on it.
   */
  minutes: number;
  /**
   * The load of its rated lessons.
   */
  load: number;
  /**
   * Lessons of the day that have no rating.
   */
  unrated: number;
}
/**
 * A visit whose student could share lessons.
 *
 */
export interface MayShare {
  visit: VisitId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * Its days, in words.
   */
  when: string;
}
/**
 * A record of someone else, or of nobody, that names the person.
 *
 */
export interface Mention {
  /**
   * What it is, as in "Lesson note".
   */
  what: string;
  /**
   * Whose it is; empty for a facility or something of the coach's own.
   */
  whose: string;
  /**
   * The words around the name.
   */
  words: string;
  /**
   * Where it is seen.
   */
  leads: SeenAt | null;
}
/**
 * Where a row is seen on screen.
 *
 */
export interface SeenAt {
  /**
   * What: student, lesson, goal, visit or facility.
   */
  to: string;
  /**
   * Which one.
   */
  id: string;
}
/**
 * All of them.
 *
 */
export interface Mentions {
  /**
   * Each.
   */
  list: Mention[];
  /**
   * So many more are not listed.
   */
  more: number;
}
/**
 * A field of a text that had no value.
 *
 */
export interface MessageGap {
  /**
   * The field, as it stands in the text between braces.
   */
  field: string;
  /**
   * Why it has none, as a sentence.
   */
  why: string;
}
/**
 * A message as a list shows it.
 *
 */
export interface MessageLine {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
}
/**
 * A message as it arrives.
 *
 */
export interface MessageLook {
  /**
   * From whom, as the header says.
   */
  from: string;
  /**
   * To whom.
   */
  to: string;
  /**
   * Who gets the same.
   */
  with: string;
  /**
   * The subject.
   */
  subject: string;
  /**
   * The date, as the header says.
   */
  date: string;
  /**
   * Its Message-ID.
   */
  mail_id: string;
  /**
   * The plain text.
   */
  text: string;
  /**
   * Everything it is made of.
   */
  parts: SeenPart[];
  /**
   * How many bytes the whole comes to.
   */
  size: number;
  /**
   * Whether these are the bytes that went out; otherwise as they would now.
   */
  sealed: boolean;
}
/**
 * A part of a message as a reader of messages finds it.
 *
 */
export interface SeenPart {
  /**
   * Its place, from 0.
   */
  place: number;
  /**
   * Its file\u{2019}s name; empty for a text.
   */
  name: string;
  /**
   * Its media type.
   */
  media: string;
  /**
   * How many bytes it comes to.
   */
  size: number;
}
/**
 * A file that a message carries.
 *
 */
export interface MessagePart {
  id: MessagePartId;
  /**
   * Its name.
   */
  name: string;
  /**
   * Its media type (RFC 6838).
   */
  media: string;
  /**
   * How many bytes.
   */
  size: number;
}
/**
 * Something that became of a message.
 *
 */
export interface MessageStep {
  id: MessageStepId;
  at: Instant;
  state: MessageState;
  /**
   * The same in words.
   */
  words: string;
}
/**
 * A text a kind of message begins with.
 *
 */
export interface MessageText {
  kind: MessageKind;
  language: Language;
  /**
   * The subject, with fields.
   */
  subject: string;
  /**
   * The words, with fields.
   */
  words: string;
  /**
   * Whether the coach changed it.
   */
  own: boolean;
  /**
   * The fields there are, each with what it says.
   */
  fields: TextField[];
}
/**
 * A field of a text.
 *
 */
export interface TextField {
  /**
   * As it is written, between braces.
   */
  field: string;
  /**
   * What it says.
   */
  says: string;
}
/**
 * The figures of a month.
 *
 */
export interface MonthFigures {
  /**
   * 1 for January.
   */
  month: number;
  figures: Figures;
}
/**
 * A goal that moved.
 *
 */
export interface Move {
  to: State;
  goal: GoalId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  day: Day;
  /**
   * The visit it moved at; `None` between visits.
   */
  visit: VisitId | null;
  /**
   * When that visit was, in words; empty between visits.
   */
  when: string;
  /**
   * Why, in words.
   */
  why: string;
  /**
   * Its title.
   */
  title: string;
}
/**
 * How many goals moved.
 *
 */
export interface Moved {
  /**
   * To met.
   */
  met: number;
  /**
   * To kept.
   */
  kept: number;
  /**
   * To slipped.
   */
  slipped: number;
  /**
   * Raised to a harder goal.
   */
  raised: number;
}
/**
 * An observation with every time it was seen.
 *
 */
export interface Observation {
  id: ObservationId;
  student: StudentId;
  kind: ObservationKind;
  /**
   * The skill it is about; empty for none in particular.
   */
  skill: string;
  /**
   * What was seen, in the coach's words.
   */
  words: string;
  /**
   * The goal it became, if any.
   */
  goal: GoalId | null;
  /**
   * Every time, oldest first.
   */
  seen: Sighting[];
  /**
   * How often, in words: "third time, two visits".
   */
  often: string;
}
/**
 * One time it was seen.
 *
 */
export interface Sighting {
  day: Day;
  /**
   * The visit; `None` between visits.
   */
  visit: VisitId | null;
  /**
   * The lesson, if any.
   */
  lesson: LessonId | null;
  /**
   * Where in play, as in "game 2"; empty where not said.
   */
  place: string;
}
/**
 * Whose observations.
 *
 */
export interface ObservationsListInput {
  student: StudentId;
}
/**
 * The goal that an observation becomes.
 *
 */
export interface ObservationsMakeGoalInput {
  observation: ObservationId;
  goal: SetGoal;
}
/**
 * A goal as shown.
 *
 */
export interface ObservationsMakeGoalOutput {
  goal: Goal;
  standing: Standing;
  /**
   * Its blocks, visit by visit in time.
   */
  blocks: Block[];
  /**
   * The visits it was at, in time.
   */
  visits: VisitId[];
  /**
   * End tests that were repeated until they passed, and what that is worth.
   */
  repeated: Repeated[];
}
/**
 * The same thing, seen again.
 *
 */
export interface ObservationsSeeAgainInput {
  observation: ObservationId;
  /**
   * The visit; left out between visits.
   */
  visit?: VisitId | null;
  /**
   * The lesson, if any.
   */
  lesson?: LessonId | null;
  /**
   * Where in play; empty where it does not matter.
   */
  place?: string;
  /**
   * The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
}
/**
 * An observation with every time it was seen.
 *
 */
export interface ObservationsSeeAgainOutput {
  id: ObservationId;
  student: StudentId;
  kind: ObservationKind;
  /**
   * The skill it is about; empty for none in particular.
   */
  skill: string;
  /**
   * What was seen, in the coach's words.
   */
  words: string;
  /**
   * The goal it became, if any.
   */
  goal: GoalId | null;
  /**
   * Every time, oldest first.
   */
  seen: Sighting[];
  /**
   * How often, in words: "third time, two visits".
   */
  often: string;
}
/**
 * Something seen, in the coach's words. Seen before in the same words, it is the same thing again.
 *
 */
export interface ObservationsSeeInput {
  student: StudentId;
  kind: ObservationKind;
  /**
   * What was seen.
   */
  words: string;
  /**
   * A skill of the pack or of the coach's own; empty for none.
   */
  skill?: string;
  /**
   * The visit; left out between visits.
   */
  visit?: VisitId | null;
  /**
   * The lesson, if any.
   */
  lesson?: LessonId | null;
  /**
   * Where in play; empty where it does not matter.
   */
  place?: string;
  /**
   * The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
   */
  day?: string;
}
/**
 * An observation with every time it was seen.
 *
 */
export interface ObservationsSeeOutput {
  id: ObservationId;
  student: StudentId;
  kind: ObservationKind;
  /**
   * The skill it is about; empty for none in particular.
   */
  skill: string;
  /**
   * What was seen, in the coach's words.
   */
  words: string;
  /**
   * The goal it became, if any.
   */
  goal: GoalId | null;
  /**
   * Every time, oldest first.
   */
  seen: Sighting[];
  /**
   * How often, in words: "third time, two visits".
   */
  often: string;
}
/**
 * An offer as stored.
 *
 */
export interface Offer {
  id: OfferId;
  visit: VisitId;
  made: Day;
  state: OfferState;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The message, word for word.
   */
  words: string;
  /**
   * Its lessons.
   */
  lessons: OfferedLesson[];
  /**
   * The whole price, as in "174.00 EUR"; empty when a part of it is not known.
   */
  price: string;
  /**
   * What the student said.
   */
  note: string;
}
/**
 * A lesson as it was offered.
 *
 */
export interface OfferedLesson {
  lesson: LessonId;
  day: Day;
  starts: Time;
  ends: Time;
  /**
   * The facility.
   */
  place: string;
  /**
   * The court, or empty.
   */
  court: string;
  /**
   * What the lesson costs, as in "40.00 EUR"; empty when no rate is known for its length.
   */
  fee: string;
  /**
   * What the court costs; empty when no rule says.
   */
  court_cost: string;
}
/**
 * A time that was offered.
 *
 */
export interface OfferedOn {
  visit: VisitId;
  starts: Time;
  ends: Time;
  /**
   * Where.
   */
  place: string;
}
/**
 * What the student answered.
 *
 */
export interface OffersAnswerInput {
  offer: OfferId;
  /**
   * Whether the student agreed.
   */
  agreed: boolean;
  /**
   * What the student said.
   */
  note?: string;
}
/**
 * An offer as stored.
 *
 */
export interface OffersAnswerOutput {
  id: OfferId;
  visit: VisitId;
  made: Day;
  state: OfferState;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The message, word for word.
   */
  words: string;
  /**
   * Its lessons.
   */
  lessons: OfferedLesson[];
  /**
   * The whole price, as in "174.00 EUR"; empty when a part of it is not known.
   */
  price: string;
  /**
   * What the student said.
   */
  note: string;
}
/**
 * Which visit.
 *
 */
export interface OffersDraftInput {
  visit: VisitId;
}
/**
 * An offer before it is made.
 *
 */
export interface OffersDraftOutput {
  /**
   * The message as the program would write it.
   */
  words: string;
  /**
   * To whom it goes, as a sentence, where that is not the student alone.
   */
  to: string;
  /**
   * The lessons.
   */
  lessons: OfferedLesson[];
  /**
   * The whole price; empty when a part of it is not known.
   */
  price: string;
  /**
   * What is missing for a whole offer, a sentence each.
   */
  missing: string[];
}
/**
 * Which visit.
 *
 */
export interface OffersListInput {
  visit: VisitId;
}
/**
 * The offers of a visit.
 *
 */
export interface OffersListOutput {
  /**
   * The newest first.
   */
  offers: Offer[];
  /**
   * Where it stands, in words.
   */
  words: string;
  /**
   * What changed since the student last agreed, or, before that, since the last offer: a sentence
   * each.
   */
  changed: string[];
}
/**
 * An offer to make.
 *
 */
export interface OffersMakeInput {
  visit: VisitId;
  /**
   * The message as it goes out, the coach's changes in it.
   */
  words: string;
}
/**
 * An offer as stored.
 *
 */
export interface OffersMakeOutput {
  id: OfferId;
  visit: VisitId;
  made: Day;
  state: OfferState;
  /**
   * The day it was answered.
   */
  answered: Day | null;
  /**
   * The message, word for word.
   */
  words: string;
  /**
   * Its lessons.
   */
  lessons: OfferedLesson[];
  /**
   * The whole price, as in "174.00 EUR"; empty when a part of it is not known.
   */
  price: string;
  /**
   * What the student said.
   */
  note: string;
}
/**
 * What is offered on which terms; the form and the record are the same.
 *
 */
export interface OffersSetTermsInput {
  /**
   * The currency, an ISO 4217 code.
   */
  currency?: string;
  /**
   * What lessons cost, by their length.
   */
  fees?: Fee[];
  /**
   * The coach's terms, as they stand in every offer.
   */
  terms?: string;
}
/**
 * What is offered on which terms; the form and the record are the same.
 *
 */
export interface OffersSetTermsOutput {
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * What lessons cost, by their length.
   */
  fees: Fee[];
  /**
   * The coach's terms, as they stand in every offer.
   */
  terms: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface OffersTermsInput {}
/**
 * What is offered on which terms; the form and the record are the same.
 *
 */
export interface OffersTermsOutput {
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * What lessons cost, by their length.
   */
  fees: Fee[];
  /**
   * The coach's terms, as they stand in every offer.
   */
  terms: string;
}
/**
 * Something seen in the span, in the same words at however many students.
 *
 */
export interface OftenSeen {
  kind: ObservationKind;
  /**
   * What was seen.
   */
  words: string;
  /**
   * How often.
   */
  times: number;
  /**
   * At how many students.
   */
  students: number;
  student: StudentId;
  /**
   * That student's name.
   */
  name: string;
  /**
   * The visit it was last seen at; `None` between visits.
   */
  visit: VisitId | null;
  day: Day;
}
/**
 * A test with a published procedure.
 *
 */
export interface OnCourtTest {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
  /**
   * How it is done, step by step.
   */
  procedure: string[];
  measure: Measure;
  /**
   * Its parts.
   */
  parts: TestPart[];
  /**
   * The most points it can give; left out where nothing limits it.
   */
  most?: number | null;
  /**
   * The printed tables from a result to a level; none where no norms were found, and the coach
   * compares with results of their own.
   */
  bands: BandTable[];
  /**
   * What is known of its reliability, and what was not found.
   */
  notes: string[];
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * One part of a test.
 *
 */
export interface TestPart {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
  /**
   * How many tries it has; left out where it is timed.
   */
  tries?: number | null;
  /**
   * The most points it can give; left out where nothing limits it.
   */
  most?: number | null;
  /**
   * How a try is scored.
   */
  scoring: string;
  /**
   * The printed points of a timed part, from the slowest time to the fastest.
   */
  seconds?: SecondsPoints[];
}
/**
 * The points printed for a time.
 *
 */
export interface SecondsPoints {
  /**
   * Whole seconds.
   */
  seconds: number;
  /**
   * The points.
   */
  points: number;
}
/**
 * An input with nothing in it.
 *
 */
export interface OuttrayAccountInput {}
/**
 * The account; the form and the record are the same. An empty host: none was set.
 *
 */
export interface OuttrayAccountOutput {
  /**
   * The server that takes messages.
   */
  host: string;
  /**
   * Its port.
   */
  port: number;
  encryption: Encryption;
  /**
   * The name to sign in with; empty: the coach's own address.
   */
  user: string;
}
/**
 * A message to send again.
 *
 */
export interface OuttrayAgainInput {
  message: MessageId;
  /**
   * Whether the coach accepts that it may arrive twice.
   */
  twice?: boolean;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayAgainOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * A file to carry.
 *
 */
export interface OuttrayAttachInput {
  message: MessageId;
  /**
   * The file\u{2019}s name.
   */
  name: string;
  /**
   * Its bytes, in base64.
   */
  base64: string;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayAttachOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * New words of a message.
 *
 */
export interface OuttrayEditInput {
  message: MessageId;
  /**
   * Its subject.
   */
  subject: string;
  /**
   * Its words.
   */
  words: string;
  /**
   * The address of who gets it; left out: as it is.
   */
  to_address?: string | null;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayEditOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * An input with nothing in it.
 *
 */
export interface OuttrayFollowUpsInput {}
/**
 * What may be written now, and what lies in the tray.
 *
 */
export interface OuttrayFollowUpsOutput {
  /**
   * Proposals.
   */
  proposals: FollowUp[];
  /**
   * How many messages are to be read.
   */
  to_read: number;
  /**
   * How many need the coach.
   */
  needs: number;
  /**
   * How many are released and not handed over yet.
   */
  on_its_way: number;
}
/**
 * An invoice to issue.
 *
 */
export interface OuttrayIssueInvoiceInput {
  invoice: InvoiceId;
  /**
   * The day of issue, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  /**
   * The last day to pay; empty: as the terms say.
   */
  due?: string;
  /**
   * Whether what the payer has paid already is used for it.
   */
  use_credit?: boolean;
  /**
   * Whether it is to be paid in parts, as the terms say.
   */
  in_parts?: boolean;
}
/**
 * Messages that are in the tray.
 *
 */
export interface OuttrayIssueInvoiceOutput {
  /**
   * Which ones.
   */
  messages: MessageId[];
  /**
   * Whether all of them were there already: nothing goes out twice for the same.
   */
  already: boolean;
}
/**
 * A letter to issue and to put into the tray.
 *
 */
export interface OuttrayIssueLetterInput {
  visit: VisitId;
}
/**
 * Messages that are in the tray.
 *
 */
export interface OuttrayIssueLetterOutput {
  /**
   * Which ones.
   */
  messages: MessageId[];
  /**
   * Whether all of them were there already: nothing goes out twice for the same.
   */
  already: boolean;
}
/**
 * A proposal that the coach leaves.
 *
 */
export interface OuttrayLeaveFollowUpInput {
  /**
   * What it is about.
   */
  key: string;
}
/**
 * What may be written now, and what lies in the tray.
 *
 */
export interface OuttrayLeaveFollowUpOutput {
  /**
   * Proposals.
   */
  proposals: FollowUp[];
  /**
   * How many messages are to be read.
   */
  to_read: number;
  /**
   * How many need the coach.
   */
  needs: number;
  /**
   * How many are released and not handed over yet.
   */
  on_its_way: number;
}
/**
 * What of the tray.
 *
 */
export interface OuttrayListInput {
  /**
   * Of what is over, only what changed before this moment.
   */
  before?: Instant | null;
}
/**
 * The tray.
 *
 */
export interface OuttrayListOutput {
  to_read: TrayPart;
  needs: TrayPart;
  on_its_way: TrayPart;
  /**
   * What is over, the newest first.
   */
  over: MessageLine[];
  /**
   * Whether there is more that is over.
   */
  more: boolean;
  /**
   * Whether a mail account is set.
   */
  account: boolean;
}
/**
 * A part of the tray.
 *
 */
export interface TrayPart {
  /**
   * How many there are.
   */
  count: number;
  /**
   * The oldest of them first, as far as they are shown.
   */
  messages: MessageLine[];
}
/**
 * Which message.
 *
 */
export interface OuttrayLookInput {
  message: MessageId;
}
/**
 * A message as it arrives, or why that cannot be shown yet.
 *
 */
export interface OuttrayLookOutput {
  /**
   * As it arrives.
   */
  look: MessageLook | null;
  /**
   * Why it cannot be shown, as a sentence; empty when it can.
   */
  why: string;
}
/**
 * Which invoice.
 *
 */
export interface OuttrayOfInvoiceInput {
  invoice: InvoiceId;
}
/**
 * The messages of one thing.
 *
 */
export interface OuttrayOfInvoiceOutput {
  /**
   * The newest first.
   */
  messages: MessageLine[];
}
/**
 * Which student.
 *
 */
export interface OuttrayOfStudentInput {
  student: StudentId;
}
/**
 * The messages of one thing.
 *
 */
export interface OuttrayOfStudentOutput {
  /**
   * The newest first.
   */
  messages: MessageLine[];
}
/**
 * Messages to put into the tray.
 *
 */
export interface OuttrayPutInput {
  of: MessageOf;
}
/**
 * Messages that are in the tray.
 *
 */
export interface OuttrayPutOutput {
  /**
   * Which ones.
   */
  messages: MessageId[];
  /**
   * Whether all of them were there already: nothing goes out twice for the same.
   */
  already: boolean;
}
/**
 * Messages that the coach has read and that may go out.
 *
 */
export interface OuttrayReleaseInput {
  /**
   * Which ones.
   */
  messages: MessageId[];
}
/**
 * Messages that were released.
 *
 */
export interface OuttrayReleaseOutput {
  /**
   * How many go out now.
   */
  released: number;
}
/**
 * An input with nothing in it.
 *
 */
export interface OuttrayRulesInput {}
/**
 * When what is proposed; the form and the record are the same. 0 stands for never.
 *
 */
export interface OuttrayRulesOutput {
  /**
   * What is to be known before a visit: so many days before it.
   */
  before_visit: number;
  /**
   * The letter that was issued and not sent.
   */
  letters: boolean;
  /**
   * A reminder of an invoice, as often as the terms say.
   */
  overdue: boolean;
  /**
   * How the home plan goes: so many days after the visit.
   */
  home_report: number;
  /**
   * When a student comes again: so many weeks after the last visit.
   */
  come_again: number;
  /**
   * Whether messages to students wait for the morning where they live.
   */
  quiet: boolean;
  /**
   * From when on it is quiet there, as HH:MM.
   */
  quiet_from: string;
  /**
   * Until when.
   */
  quiet_to: string;
}
/**
 * The account; the form and the record are the same. An empty host: none was set.
 *
 */
export interface OuttraySetAccountInput {
  /**
   * The server that takes messages.
   */
  host?: string;
  /**
   * Its port.
   */
  port?: number;
  encryption?: Encryption;
  /**
   * The name to sign in with; empty: the coach's own address.
   */
  user?: string;
}
/**
 * The account; the form and the record are the same. An empty host: none was set.
 *
 */
export interface OuttraySetAccountOutput {
  /**
   * The server that takes messages.
   */
  host: string;
  /**
   * Its port.
   */
  port: number;
  encryption: Encryption;
  /**
   * The name to sign in with; empty: the coach's own address.
   */
  user: string;
}
/**
 * When what is proposed; the form and the record are the same. 0 stands for never.
 *
 */
export interface OuttraySetRulesInput {
  /**
   * What is to be known before a visit: so many days before it.
   */
  before_visit?: number;
  /**
   * The letter that was issued and not sent.
   */
  letters?: boolean;
  /**
   * A reminder of an invoice, as often as the terms say.
   */
  overdue?: boolean;
  /**
   * How the home plan goes: so many days after the visit.
   */
  home_report?: number;
  /**
   * When a student comes again: so many weeks after the last visit.
   */
  come_again?: number;
  /**
   * Whether messages to students wait for the morning where they live.
   */
  quiet?: boolean;
  /**
   * From when on it is quiet there, as HH:MM.
   */
  quiet_from?: string;
  /**
   * Until when.
   */
  quiet_to?: string;
}
/**
 * When what is proposed; the form and the record are the same. 0 stands for never.
 *
 */
export interface OuttraySetRulesOutput {
  /**
   * What is to be known before a visit: so many days before it.
   */
  before_visit: number;
  /**
   * The letter that was issued and not sent.
   */
  letters: boolean;
  /**
   * A reminder of an invoice, as often as the terms say.
   */
  overdue: boolean;
  /**
   * How the home plan goes: so many days after the visit.
   */
  home_report: number;
  /**
   * When a student comes again: so many weeks after the last visit.
   */
  come_again: number;
  /**
   * Whether messages to students wait for the morning where they live.
   */
  quiet: boolean;
  /**
   * From when on it is quiet there, as HH:MM.
   */
  quiet_from: string;
  /**
   * Until when.
   */
  quiet_to: string;
}
/**
 * A text to change.
 *
 */
export interface OuttraySetTextInput {
  kind: MessageKind;
  language: Language;
  /**
   * The subject, with fields; empty, with empty words: ours again.
   */
  subject: string;
  /**
   * The words, with fields.
   */
  words: string;
}
/**
 * Which message.
 *
 */
export interface OuttrayShowInput {
  message: MessageId;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayShowOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * A file not to carry.
 *
 */
export interface OuttrayTakeOffInput {
  message: MessageId;
  part: MessagePartId;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayTakeOffOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * A message that was told in another way.
 *
 */
export interface OuttrayTellInput {
  message: MessageId;
  how: ToldHow;
  /**
   * What was said besides; empty for nothing.
   */
  words?: string;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayTellOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * An input with nothing in it.
 *
 */
export interface OuttrayTextsInput {}
/**
 * A message not to send.
 *
 */
export interface OuttrayWithdrawInput {
  message: MessageId;
  /**
   * Why; empty for no reason.
   */
  reason?: string;
}
/**
 * A message with what became of it.
 *
 */
export interface OuttrayWithdrawOutput {
  id: MessageId;
  together: MessageId;
  kind: MessageKind;
  /**
   * About whom.
   */
  student: StudentId | null;
  to: Addressee;
  /**
   * Its subject.
   */
  subject: string;
  state: MessageState;
  /**
   * The same in words.
   */
  stands: string;
  changed: Instant;
  /**
   * When it is tried (again).
   */
  next: Instant | null;
  from: Addressee;
  with: Addressee;
  language: Language;
  /**
   * The plain text.
   */
  words: string;
  /**
   * Fields of the text that still have no value.
   */
  gaps: MessageGap[];
  /**
   * The files it carries.
   */
  parts: MessagePart[];
  /**
   * About which visit.
   */
  visit: VisitId | null;
  /**
   * About which invoice.
   */
  invoice: InvoiceId | null;
  /**
   * To which payer.
   */
  payer: PayerId | null;
  /**
   * What keeps it from being sent, a sentence each; it can still be told.
   */
  against: string[];
  /**
   * What became of it, the oldest first.
   */
  steps: MessageStep[];
  /**
   * Its Message-ID (RFC 5322), without brackets.
   */
  mail_id: string;
  /**
   * How often it was tried.
   */
  tries: number;
}
/**
 * Something that takes the coach's time; the form and the record are the same.
 *
 */
export interface OwnTimeAddInput {
  /**
   * What it is, as in league night.
   */
  what?: string;
  /**
   * The first day, as YYYY-MM-DD.
   */
  first?: string;
  /**
   * Of a span, its last day; of what comes again, the last day on which it can. Empty for the
   * first day alone, and for without end.
   */
  last?: string;
  /**
   * From this time on each of its days; empty for the whole day.
   */
  starts?: string;
  /**
   * Until this time; 00:00 is the day's end.
   */
  ends?: string;
  /**
   * The zone these times are in; empty for wherever the coach is.
   */
  zone?: string;
  again?: Again;
  /**
   * Of what comes every week or second week: on which days, 1 for Monday; none for that of the
   * first day.
   */
  weekdays?: number[];
  /**
   * Days on which it does not take place.
   */
  except?: string[];
}
/**
 * Something that takes the coach's time, as stored.
 *
 */
export interface OwnTimeAddOutput {
  id: BusyId;
  busy: Busy;
  /**
   * When, in words.
   */
  words: string;
}
/**
 * A changed thing.
 *
 */
export interface OwnTimeChangeInput {
  id: BusyId;
  busy: BusyInput;
}
/**
 * Something that takes the coach's time, as stored.
 *
 */
export interface OwnTimeChangeOutput {
  id: BusyId;
  busy: Busy;
  /**
   * When, in words.
   */
  words: string;
}
/**
 * Which of them to list.
 *
 */
export interface OwnTimeListInput {
  /**
   * Those that are over as well.
   */
  over?: boolean;
}
/**
 * Which of the things that take the coach's time.
 *
 */
export interface OwnTimeRemoveInput {
  busy: BusyId;
}
/**
 * Something that takes the coach's time, as stored.
 *
 */
export interface OwnTimeRemoveOutput {
  id: BusyId;
  busy: Busy;
  /**
   * When, in words.
   */
  words: string;
}
/**
 * The coach's week and its limits; the form and the record are the same. 0 and an empty text mean
 * no such limit.
 *
 */
export interface OwnTimeSetInput {
  /**
   * When lessons can be given, on the clock of wherever they are; none for any hour.
   */
  hours?: HoursInput[];
  /**
   * The most minutes of lessons a day.
   */
  day_limit?: number;
  /**
   * The most minutes of lessons a week, from Monday to Sunday (ISO 8601).
   */
  week_limit?: number;
  /**
   * The most minutes of lessons without a break.
   */
  longest_run?: number;
  /**
   * A meal is kept free each day from this time; empty for none.
   */
  meal_starts?: string;
  /**
   * Until this time.
   */
  meal_ends?: string;
  /**
   * The meal's minutes, somewhere between these times; 0 for all the time between. Time that
   * something else takes is not free for a meal; a day on which such things alone leave no time
   * for it has none.
   */
  meal_minutes?: number;
  /**
   * Minutes from one facility to another, where no way below says more.
   */
  travel?: number;
  /**
   * The ways that take longer or shorter than that, both directions alike.
   */
  ways?: Way[];
}
/**
 * The way between two facilities.
 *
 */
export interface Way {
  one: FacilityId;
  other: FacilityId;
  /**
   * The minutes from door to door.
   */
  minutes: number;
}
/**
 * The coach's week and its limits; the form and the record are the same. 0 and an empty text mean
 * no such limit.
 *
 */
export interface OwnTimeSetOutput {
  /**
   * When lessons can be given, on the clock of wherever they are; none for any hour.
   */
  hours: Hours[];
  /**
   * The most minutes of lessons a day.
   */
  day_limit: number;
  /**
   * The most minutes of lessons a week, from Monday to Sunday (ISO 8601).
   */
  week_limit: number;
  /**
   * The most minutes of lessons without a break.
   */
  longest_run: number;
  /**
   * A meal is kept free each day from this time; empty for none.
   */
  meal_starts: string;
  /**
   * Until this time.
   */
  meal_ends: string;
  /**
   * The meal's minutes, somewhere between these times; 0 for all the time between. Time that
   * something else takes is not free for a meal; a day on which such things alone leave no time
   * for it has none.
   */
  meal_minutes: number;
  /**
   * Minutes from one facility to another, where no way below says more.
   */
  travel: number;
  /**
   * The ways that take longer or shorter than that, both directions alike.
   */
  ways: Way[];
}
/**
 * An input with nothing in it.
 *
 */
export interface OwnTimeShowInput {}
/**
 * The coach's week and its limits; the form and the record are the same. 0 and an empty text mean
 * no such limit.
 *
 */
export interface OwnTimeShowOutput {
  /**
   * When lessons can be given, on the clock of wherever they are; none for any hour.
   */
  hours: Hours[];
  /**
   * The most minutes of lessons a day.
   */
  day_limit: number;
  /**
   * The most minutes of lessons a week, from Monday to Sunday (ISO 8601).
   */
  week_limit: number;
  /**
   * The most minutes of lessons without a break.
   */
  longest_run: number;
  /**
   * A meal is kept free each day from this time; empty for none.
   */
  meal_starts: string;
  /**
   * Until this time.
   */
  meal_ends: string;
  /**
   * The meal's minutes, somewhere between these times; 0 for all the time between. Time that
   * something else takes is not free for a meal; a day on which such things alone leave no time
   * for it has none.
   */
  meal_minutes: number;
  /**
   * Minutes from one facility to another, where no way below says more.
   */
  travel: number;
  /**
   * The ways that take longer or shorter than that, both directions alike.
   */
  ways: Way[];
}
/**
 * The data of one sport.
 *
 */
export interface Pack {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The sport, as a person writes it.
   */
  name: string;
  /**
   * The version of the pack, such as `1`.
   */
  version: string;
  unit: Unit;
  /**
   * What the sources are, and what was not found.
   */
  notes: string[];
  /**
   * The groups of skills, in the order they are shown.
   */
  groups: Group[];
  /**
   * The skills.
   */
  skills: Skill[];
  levels: LevelScale;
  /**
   * The names of divisions and levels that associations use; never turned into one another.
   */
  divisions: Division[];
  court: PackCourt;
  /**
   * The rule sets that count points to a game. Which one holds is chosen for each match.
   */
  scoring: RuleSet[];
  /**
   * The rule sets that count points, games and sets.
   */
  set_scoring: SetRuleSet[];
  /**
   * Drills to plan a lesson from.
   */
  drills: Drill[];
  /**
   * Published tests on a court.
   */
  tests: OnCourtTest[];
}
/**
 * Something a student can work on.
 *
 */
export interface Skill {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The id of its group.
   */
  group: string;
  /**
   * The name shown.
   */
  name: string;
  /**
   * Its name in German, for letters; empty where it has none.
   */
  german: string;
  /**
   * What makes a try a good one.
   */
  good_try: string;
  condition: Condition;
  /**
   * A cue to begin with.
   */
  cue: string;
  /**
   * Where the definition and the measure of a good try come from.
   */
  source: string;
}
/**
 * A court in the pack's unit: x from the left, z from the floor, y from the front wall or, on a
 * court with a net, from the far end.
 *
 */
export interface PackCourt {
  /**
   * From the left side to the right side.
   */
  width: number;
  /**
   * From the front wall to the back wall, or from end to end.
   */
  length: number;
  /**
   * From the floor to the ceiling, or the least clear height where the ceiling is no part of
   * the game; left out where no source gives one.
   */
  height?: number | null;
  /**
   * What the ball can touch: the floor alone on an open court.
   */
  surfaces: PackSurface[];
  /**
   * The net, on a court that has one.
   */
  net?: PackNet | null;
  /**
   * The lines.
   */
  lines: PackLine[];
  /**
   * Where the size comes from.
   */
  source: string;
}
/**
 * A wall, the floor or the ceiling.
 *
 */
export interface PackSurface {
  id: SurfaceId;
  /**
   * Its extent across.
   */
  across: number;
  /**
   * Its other extent: up for a wall, along the court for floor and ceiling.
   */
  along: number;
  /**
   * Whether the rules give `along` as a least height and the wall may be higher.
   */
  at_least: boolean;
  /**
   * What a wall is made of, piece by piece, where it is not one solid wall.
   */
  panels?: PackPanel[];
}
/**
 * A rectangle of a wall.
 *
 */
export interface PackPanel {
  kind: PackPanelKind;
  /**
   * The corner nearest the origin: along the wall, and up.
   */
  from: number[];
  /**
   * The opposite corner.
   */
  to: number[];
}
/**
 * The net.
 *
 */
export interface PackNet {
  /**
   * Its distance from the far end.
   */
  at: number;
  /**
   * Its height in the middle.
   */
  centre: number;
  /**
   * Its height at the sides, or at its posts.
   */
  sides: number;
  /**
   * How far outside the court the posts stand.
   */
  posts_outside: number;
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * A line, given by the edge the rules measure.
 *
 */
export interface PackLine {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
  surface: SurfaceId;
  /**
   * One end of the measured edge: x and y on floor and ceiling, x and z on the front and back
   * wall, y and z on a side wall.
   */
  from: number[];
  /**
   * The other end.
   */
  to: number[];
  /**
   * The width of the paint.
   */
  width: number;
  measured: PackEdge;
  /**
   * How it is broken, where it is.
   */
  broken?: Broken | null;
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * How matches of point games are scored, for as long as it holds.
 *
 */
export interface RuleSet {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
  /**
   * The first day it holds; left out where no source gives one.
   */
  from?: string | null;
  /**
   * The last day it held; left out while it holds, or where no source gives one.
   */
  until?: string | null;
  scoring: Scoring;
  /**
   * The games in order, as many as can be played.
   */
  games: PackGame[];
  /**
   * How many games win the match.
   */
  games_to_win: number;
  next_server: NextServer;
  /**
   * Doubles in which both of a side serve before the service goes over; the side that serves
   * first in a game has one server only.
   */
  both_serve?: boolean;
  /**
   * What the numbers leave out.
   */
  notes: string[];
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * How matches of sets are scored, for as long as it holds. A game is won by four points and a lead
 * of two, except as `deuce` says; the service changes with every game.
 *
 */
export interface SetRuleSet {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The name shown.
   */
  name: string;
  /**
   * The first day it holds; left out where no source gives one.
   */
  from?: string | null;
  /**
   * The last day it held; left out while it holds, or where no source gives one.
   */
  until?: string | null;
  /**
   * How many sets win the match.
   */
  sets_to_win: number;
  set: SetRule;
  /**
   * What is played instead when the next set decides the match; left out where it is a set like
   * the others.
   */
  last_set?: LastSet | null;
  deuce: Deuce;
  /**
   * What the numbers leave out.
   */
  notes: string[];
  /**
   * Where it comes from.
   */
  source: string;
}
/**
 * Something that happened to a package.
 *
 */
export interface PackageStep {
  entry: EntryId;
  day: Day;
  kind: EntryKind;
  /**
   * In words.
   */
  words: string;
  /**
   * Lessons more, or fewer.
   */
  lessons: number;
  /**
   * Whether it was taken back.
   */
  taken_back: boolean;
  /**
   * The lesson that it settled, while it does.
   */
  lesson: LessonId | null;
  /**
   * Whose.
   */
  student: StudentId | null;
}
/**
 * A new last day for a package.
 *
 */
export interface PackagesExtendInput {
  package: PackageId;
  /**
   * The last day, as YYYY-MM-DD.
   */
  until: string;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A package with its history.
 *
 */
export interface PackagesExtendOutput {
  package: Package;
  /**
   * What happened to it, the oldest first.
   */
  steps: PackageStep[];
  /**
   * New last days, the oldest first.
   */
  extensions: Extension[];
}
/**
 * Lessons of a package to give back.
 *
 */
export interface PackagesGiveBackInput {
  package: PackageId;
  /**
   * Why, as it is to stand on the credit note.
   */
  reason: string;
}
/**
 * An invoice or credit note.
 *
 */
export interface PackagesGiveBackOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * Lessons on top.
 *
 */
export interface PackagesGiveBonusInput {
  package: PackageId;
  /**
   * How many.
   */
  lessons: number;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A package with its history.
 *
 */
export interface PackagesGiveBonusOutput {
  package: Package;
  /**
   * What happened to it, the oldest first.
   */
  steps: PackageStep[];
  /**
   * New last days, the oldest first.
   */
  extensions: Extension[];
}
/**
 * A package whose last day has passed.
 *
 */
export interface PackagesLapseInput {
  package: PackageId;
  /**
   * Why: what was agreed.
   */
  reason: string;
}
/**
 * A package with its history.
 *
 */
export interface PackagesLapseOutput {
  package: Package;
  /**
   * What happened to it, the oldest first.
   */
  steps: PackageStep[];
  /**
   * New last days, the oldest first.
   */
  extensions: Extension[];
}
/**
 * Whose packages.
 *
 */
export interface PackagesListInput {
  /**
   * Of a student; left out for everyone's.
   */
  student?: StudentId | null;
}
/**
 * Lessons to someone else of the same payer.
 *
 */
export interface PackagesMoveLessonsInput {
  package: PackageId;
  student: StudentId;
  /**
   * How many.
   */
  lessons: number;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A package with its history.
 *
 */
export interface PackagesMoveLessonsOutput {
  package: Package;
  /**
   * What happened to it, the oldest first.
   */
  steps: PackageStep[];
  /**
   * New last days, the oldest first.
   */
  extensions: Extension[];
}
/**
 * A package to sell.
 *
 */
export interface PackagesSellInput {
  student: StudentId;
  /**
   * Others whose lessons it pays for too.
   */
  also?: StudentId[];
  /**
   * Its name, as it stands on the invoice; empty for one made from the numbers.
   */
  words?: string;
  /**
   * Lessons.
   */
  lessons: number;
  /**
   * The length of each in minutes; left out for any.
   */
  minutes?: number | null;
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * What it costs, a decimal.
   */
  price: string;
  /**
   * What one such lesson costs on its own, a decimal; empty while not known.
   */
  single?: string;
  /**
   * The last day, as YYYY-MM-DD; empty without end.
   */
  expires?: string;
  /**
   * Whether it is a gift: nothing is paid for it.
   */
  gift?: boolean;
  /**
   * Whether to issue its invoice at once.
   */
  issue?: boolean;
}
/**
 * An invoice or credit note.
 *
 */
export interface PackagesSellOutput {
  id: InvoiceId;
  kind: DocumentKind;
  payer: PayerId;
  /**
   * The name: as printed, once issued.
   */
  name: string;
  /**
   * Of a credit note: the invoice.
   */
  corrects: InvoiceId | null;
  /**
   * Its number.
   */
  corrects_number: string;
  /**
   * The currency.
   */
  currency: string;
  prices: Prices;
  /**
   * A remark above the lines.
   */
  words: string;
  /**
   * The cash step, a decimal; empty for none.
   */
  step: string;
  /**
   * The number; empty while a draft.
   */
  number: string;
  /**
   * The day of issue.
   */
  day: Day | null;
  /**
   * The last day to pay.
   */
  due: Day | null;
  state: InvoiceState;
  /**
   * The same in words.
   */
  stands: string;
  /**
   * The lines.
   */
  lines: InvoiceLine[];
  /**
   * What is taken off the whole, or put on it.
   */
  extras: InvoiceExtra[];
  sums: InvoiceSums;
  /**
   * What is still to be paid, a decimal.
   */
  open: string;
  /**
   * What keeps a draft from being issued, a sentence each.
   */
  missing: InvoiceLack[];
  /**
   * Its credit notes.
   */
  credits: InvoiceListed[];
  /**
   * The parts in which it is to be paid; none for all at once.
   */
  parts: DocPart[];
  /**
   * Its reminders, the oldest first.
   */
  reminders: InvoiceReminder[];
  /**
   * Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
   */
  file_lacks: string[];
}
/**
 * Which package.
 *
 */
export interface PackagesShowInput {
  package: PackageId;
}
/**
 * A package with its history.
 *
 */
export interface PackagesShowOutput {
  package: Package;
  /**
   * What happened to it, the oldest first.
   */
  steps: PackageStep[];
  /**
   * New last days, the oldest first.
   */
  extensions: Extension[];
}
/**
 * Which package.
 *
 */
export interface PackagesWouldGiveBackInput {
  package: PackageId;
}
/**
 * A part in which an invoice may be paid before the rest.
 *
 */
export interface PartRow {
  /**
   * How much of what is due, in percent.
   */
  percent: number;
  /**
   * So many days after the invoice is issued.
   */
  days: number;
}
/**
 * Who pays, as kept.
 *
 */
export interface Payer {
  id: PayerId;
  /**
   * Full name, as it stands on an invoice.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id: string;
  language: Language;
  /**
   * For whom, by name.
   */
  students: PaysFor[];
}
/**
 * Who pays; the form and the record are the same.
 *
 */
export interface PayerForm {
  /**
   * Full name, as it stands on an invoice.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id: string;
  language: Language;
}
/**
 * Who pays; the form and the record are the same.
 *
 */
export interface PayerFormInput {
  /**
   * Full name, as it stands on an invoice.
   */
  name?: string;
  /**
   * Postal address, several lines.
   */
  address?: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country?: string;
  /**
   * E-mail address.
   */
  email?: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id?: string;
  language?: Language;
}
/**
 * A payer to add.
 *
 */
export interface PayersAddInput {
  payer: PayerFormInput;
}
/**
 * Who pays, as kept.
 *
 */
export interface PayersAddOutput {
  id: PayerId;
  /**
   * Full name, as it stands on an invoice.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id: string;
  language: Language;
  /**
   * For whom, by name.
   */
  students: PaysFor[];
}
/**
 * A payer to change.
 *
 */
export interface PayersChangeInput {
  id: PayerId;
  payer: PayerFormInput;
}
/**
 * Who pays, as kept.
 *
 */
export interface PayersChangeOutput {
  id: PayerId;
  /**
   * Full name, as it stands on an invoice.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id: string;
  language: Language;
  /**
   * For whom, by name.
   */
  students: PaysFor[];
}
/**
 * Who is to pay for a student.
 *
 */
export interface PayersChooseInput {
  student: StudentId;
  /**
   * Who; left out for whoever the student's own record names.
   */
  payer?: PayerId | null;
}
/**
 * Who pays, as kept.
 *
 */
export interface PayersChooseOutput {
  id: PayerId;
  /**
   * Full name, as it stands on an invoice.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id: string;
  language: Language;
  /**
   * For whom, by name.
   */
  students: PaysFor[];
}
/**
 * An input with nothing in it.
 *
 */
export interface PayersListInput {}
/**
 * Which student.
 *
 */
export interface PayersOfStudentInput {
  student: StudentId;
}
/**
 * Who pays for a student: as chosen, or as the student's record has it.
 *
 */
export interface PayersOfStudentOutput {
  /**
   * The payer; `None` until something was invoiced or somebody chosen.
   */
  payer: Payer | null;
  proposed: PayerForm;
}
/**
 * Which payer.
 *
 */
export interface PayersShowInput {
  payer: PayerId;
}
/**
 * Who pays, as kept.
 *
 */
export interface PayersShowOutput {
  id: PayerId;
  /**
   * Full name, as it stands on an invoice.
   */
  name: string;
  /**
   * Postal address, several lines.
   */
  address: string;
  /**
   * The country, two letters of ISO 3166-1; empty while not known.
   */
  country: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * The payer's own number for value added tax; empty for a private person.
   */
  tax_id: string;
  language: Language;
  /**
   * For whom, by name.
   */
  students: PaysFor[];
}
/**
 * Which payer.
 *
 */
export interface PaymentsAccountInput {
  payer: PayerId;
}
/**
 * The account of a payer.
 *
 */
export interface PaymentsAccountOutput {
  payer: Payer;
  /**
   * What stands on it, by currency.
   */
  standing: AccountStands[];
  /**
   * Their invoices: drafts first, then the newest.
   */
  invoices: InvoiceListed[];
  /**
   * Their packages.
   */
  packages: Package[];
  /**
   * All that was charged and paid, the oldest first.
   */
  lines: AccountLine[];
}
/**
 * Money that was kept, to be used for an invoice.
 *
 */
export interface PaymentsApplyInput {
  invoice: InvoiceId;
  /**
   * How much, a decimal; empty for as much as there is and as is open.
   */
  amount?: string;
}
/**
 * The account of a payer.
 *
 */
export interface PaymentsApplyOutput {
  payer: Payer;
  /**
   * What stands on it, by currency.
   */
  standing: AccountStands[];
  /**
   * Their invoices: drafts first, then the newest.
   */
  invoices: InvoiceListed[];
  /**
   * Their packages.
   */
  packages: Package[];
  /**
   * All that was charged and paid, the oldest first.
   */
  lines: AccountLine[];
}
/**
 * Money to pay back.
 *
 */
export interface PaymentsPayBackInput {
  payer: PayerId;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  method: PaidBy;
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * How much, a decimal.
   */
  amount: string;
  /**
   * Why.
   */
  words?: string;
}
/**
 * The account of a payer.
 *
 */
export interface PaymentsPayBackOutput {
  payer: Payer;
  /**
   * What stands on it, by currency.
   */
  standing: AccountStands[];
  /**
   * Their invoices: drafts first, then the newest.
   */
  invoices: InvoiceListed[];
  /**
   * Their packages.
   */
  packages: Package[];
  /**
   * All that was charged and paid, the oldest first.
   */
  lines: AccountLine[];
}
/**
 * A payment that came in.
 *
 */
export interface PaymentsReceiveInput {
  payer: PayerId;
  /**
   * The day, as YYYY-MM-DD; empty for today.
   */
  day?: string;
  method: PaidBy;
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * How much, a decimal.
   */
  amount: string;
  /**
   * What stood on it; empty for nothing.
   */
  words?: string;
  /**
   * For which invoices; none for those that are due first. What is over is kept for later.
   */
  invoices?: ForInvoice[];
  /**
   * Whether it is a deposit: all of it is kept for later.
   */
  deposit?: boolean;
  /**
   * A name that the payment has elsewhere, so that the same is never counted twice.
   */
  reference?: string;
}
/**
 * A payment as entered.
 *
 */
export interface PaymentsReceiveOutput {
  entry: EntryId;
  /**
   * What was used for invoices, a decimal.
   */
  used: string;
  /**
   * What is kept for later, a decimal.
   */
  kept: string;
  /**
   * The same as a sentence.
   */
  words: string;
}
/**
 * An entry that was a slip.
 *
 */
export interface PaymentsTakeBackInput {
  entry: EntryId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * An entry as made.
 *
 */
export interface PaymentsTakeBackOutput {
  id: EntryId;
  day: Day;
  kind: EntryKind;
  /**
   * In words.
   */
  words: string;
  /**
   * The currency.
   */
  currency: string;
  /**
   * What it takes back.
   */
  reverses: EntryId | null;
  /**
   * Whether it was taken back.
   */
  reversed: boolean;
}
/**
 * What is open, to be given up.
 *
 */
export interface PaymentsWriteOffInput {
  invoice: InvoiceId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * The account of a payer.
 *
 */
export interface PaymentsWriteOffOutput {
  payer: Payer;
  /**
   * What stands on it, by currency.
   */
  standing: AccountStands[];
  /**
   * Their invoices: drafts first, then the newest.
   */
  invoices: InvoiceListed[];
  /**
   * Their packages.
   */
  packages: Package[];
  /**
   * All that was charged and paid, the oldest first.
   */
  lines: AccountLine[];
}
/**
 * A person's day.
 *
 */
export interface PersonDay {
  day: Day;
  /**
   * The visit that holds it; left out when the person is not in town.
   */
  visit: VisitId | null;
  /**
   * Where that visit is, or empty.
   */
  place: string;
  /**
   * All its days.
   */
  days: Span | null;
  /**
   * The lessons.
   */
  lessons: LessonOn[];
  /**
   * Times on this day that were offered, are not answered, and are no lesson at this time any
   * more.
   */
  offered: OfferedOn[];
}
/**
 * A facility on a day of a trip, with what of it could still be sold.
 *
 */
export interface PlaceOn {
  facility: FacilityId;
  /**
   * Its name.
   */
  place: string;
  /**
   * Its town, or empty.
   */
  town: string;
  /**
   * Its zone.
   */
  zone: string;
  /**
   * When it is open, as far as its rules say.
   */
  open: FreeStretch[];
  /**
   * The hours in which a lesson would still fit.
   */
  free: FreeStretch[];
}
/**
 * How far a plan is.
 *
 */
export interface PlanLook {
  stage: PlanStage;
  /**
   * The plan, once there is one.
   */
  proposal: PlanMade | null;
  /**
   * Changes that make room for more, as far as they were tried.
   */
  would_free: WouldFree[];
  /**
   * So many changes were tried.
   */
  tried: number;
  /**
   * Of so many.
   */
  of: number;
  /**
   * Why it could not be made; empty when it could.
   */
  trouble: string;
}
/**
 * A plan.
 *
 */
export interface PlanMade {
  /**
   * Whether it was proven that none is better.
   */
  proven: boolean;
  /**
   * Its lessons, by day and time.
   */
  lines: PlannedLesson[];
  /**
   * The lessons that found no place.
   */
  missing: LessonsMissing[];
  /**
   * What its courts cost, one amount for each currency.
   */
  cost: string[];
  /**
   * On how many days there are lessons.
   */
  days: number;
  /**
   * How many facilities are gone to, each day counted.
   */
  trips: number;
  /**
   * What it comes to: missing, spread, cost in smallest units, distance from what is liked best.
   */
  sums: number[];
  /**
   * What its facilities ask besides, which the planner does not watch: a sentence each, behind the
   * facility's name.
   */
  mind: string[];
  /**
   * Hours in which the coach is still free and a court may be had.
   */
  free: FreeHours[];
}
/**
 * A lesson of a plan.
 *
 */
export interface PlannedLesson {
  place: PlanPlace;
  /**
   * The lesson, where it stands already.
   */
  lesson: LessonId | null;
  /**
   * Whether it was locked.
   */
  locked: boolean;
  /**
   * The students, in the order of their visits in the place.
   */
  students: StudentId[];
  /**
   * Their names, as in "Ana and Ben".
   */
  name: string;
  ends: Time;
  facility: FacilityId;
  /**
   * Its name.
   */
  facility_name: string;
  /**
   * The court's name.
   */
  court_name: string;
  /**
   * What the court costs, as in "18.00 EUR"; empty when no rule says.
   */
  cost: string;
  /**
   * From when the court can be asked for, as a sentence; empty when no rule says.
   */
  ask_words: string;
  /**
   * Why it is there.
   */
  why: string;
  /**
   * What speaks against it, a sentence each.
   */
  against: string[];
}
/**
 * Where a lesson of a plan is.
 *
 */
export interface PlanPlace {
  visit: VisitId;
  /**
   * Who shares it, by their visits; none for a lesson of one student alone.
   */
  with: VisitId[];
  court: CourtId;
  day: Day;
  starts: Time;
}
/**
 * A change that would make room for more lessons, tried out.
 *
 */
export interface WouldFree {
  change: WhatIf;
  /**
   * As a sentence.
   */
  words: string;
  /**
   * So many lessons more find a place.
   */
  lessons: number;
}
/**
 * A plan to begin.
 *
 */
export interface PlanningBeginInput {
  plan: AskPlan;
  /**
   * So many milliseconds the answer waits for the plan, at most a minute; 0 not at all.
   */
  wait?: number;
}
/**
 * A plan that was begun.
 *
 */
export interface PlanningBeginOutput {
  job: JobId;
  look: PlanLook;
}
/**
 * Which visit.
 *
 */
export interface PlanningClearWishInput {
  visit: VisitId;
}
/**
 * A visit's wish as it stands.
 *
 */
export interface PlanningClearWishOutput {
  /**
   * What is kept; `None` while nothing was written down.
   */
  wish: VisitWish | null;
  /**
   * In words; empty while nothing was written down.
   */
  words: string;
  /**
   * What became impossible of it since it was written down, a sentence each.
   */
  against: string[];
  /**
   * The visits whose students could share lessons: those whose days meet these, and those that
   * were chosen.
   */
  may_share: MayShare[];
}
/**
 * What the student of a visit wishes for; the form and the record are the same.
 *
 */
export interface VisitWish {
  /**
   * How many lessons in all.
   */
  lessons: number;
  /**
   * How long each is, in minutes.
   */
  minutes: number;
  /**
   * At most so many a day.
   */
  per_day: number;
  /**
   * Minutes of rest between two on a day, at least.
   */
  rest: number;
  /**
   * On the first day not before this time, HH:MM; empty for any.
   */
  arrives: string;
  /**
   * On the last day not after this time.
   */
  leaves: string;
  /**
   * On every day not before this time.
   */
  earliest: string;
  /**
   * On every day not after this time.
   */
  latest: string;
  /**
   * The hours liked best, from.
   */
  best_from: string;
  /**
   * Until.
   */
  best_to: string;
  /**
   * The court liked best.
   */
  court: CourtId | null;
  /**
   * What a lesson that finds no place counts: 1 as usual, to 3.
   */
  weight: number;
  /**
   * What else was said.
   */
  note: string;
  /**
   * Those of the lessons that others share.
   */
  shared: SharedLessons[];
}
/**
 * Lessons of a wish that others share, on one court at one time.
 *
 */
export interface SharedLessons {
  /**
   * So many of the wish's lessons.
   */
  lessons: number;
  /**
   * The visits of those who share them. They need not wish for lessons of their own, and these
   * come on top of what they do wish for.
   */
  with: VisitId[];
}
/**
 * Which plan.
 *
 */
export interface PlanningLookInput {
  job: JobId;
}
/**
 * How far a plan is.
 *
 */
export interface PlanningLookOutput {
  stage: PlanStage;
  /**
   * The plan, once there is one.
   */
  proposal: PlanMade | null;
  /**
   * Changes that make room for more, as far as they were tried.
   */
  would_free: WouldFree[];
  /**
   * So many changes were tried.
   */
  tried: number;
  /**
   * Of so many.
   */
  of: number;
  /**
   * Why it could not be made; empty when it could.
   */
  trouble: string;
}
/**
 * A wish to write down.
 *
 */
export interface PlanningSetWishInput {
  visit: VisitId;
  wish: VisitWishInput;
}
/**
 * What the student of a visit wishes for; the form and the record are the same.
 *
 */
export interface VisitWishInput {
  /**
   * How many lessons in all.
   */
  lessons?: number;
  /**
   * How long each is, in minutes.
   */
  minutes?: number;
  /**
   * At most so many a day.
   */
  per_day?: number;
  /**
   * Minutes of rest between two on a day, at least.
   */
  rest?: number;
  /**
   * On the first day not before this time, HH:MM; empty for any.
   */
  arrives?: string;
  /**
   * On the last day not after this time.
   */
  leaves?: string;
  /**
   * On every day not before this time.
   */
  earliest?: string;
  /**
   * On every day not after this time.
   */
  latest?: string;
  /**
   * The hours liked best, from.
   */
  best_from?: string;
  /**
   * Until.
   */
  best_to?: string;
  /**
   * The court liked best.
   */
  court?: CourtId | null;
  /**
   * What a lesson that finds no place counts: 1 as usual, to 3.
   */
  weight?: number;
  /**
   * What else was said.
   */
  note?: string;
  /**
   * Those of the lessons that others share.
   */
  shared?: SharedLessonsInput[];
}
/**
 * Lessons of a wish that others share, on one court at one time.
 *
 */
export interface SharedLessonsInput {
  /**
   * So many of the wish's lessons.
   */
  lessons?: number;
  /**
   * The visits of those who share them. They need not wish for lessons of their own, and these
   * come on top of what they do wish for.
   */
  with?: VisitId[];
}
/**
 * A visit's wish as it stands.
 *
 */
export interface PlanningSetWishOutput {
  /**
   * What is kept; `None` while nothing was written down.
   */
  wish: VisitWish | null;
  /**
   * In words; empty while nothing was written down.
   */
  words: string;
  /**
   * What became impossible of it since it was written down, a sentence each.
   */
  against: string[];
  /**
   * The visits whose students could share lessons: those whose days meet these, and those that
   * were chosen.
   */
  may_share: MayShare[];
}
/**
 * Which plan.
 *
 */
export interface PlanningStopInput {
  job: JobId;
}
/**
 * How far a plan is.
 *
 */
export interface PlanningStopOutput {
  stage: PlanStage;
  /**
   * The plan, once there is one.
   */
  proposal: PlanMade | null;
  /**
   * Changes that make room for more, as far as they were tried.
   */
  would_free: WouldFree[];
  /**
   * So many changes were tried.
   */
  tried: number;
  /**
   * Of so many.
   */
  of: number;
  /**
   * Why it could not be made; empty when it could.
   */
  trouble: string;
}
/**
 * Lines to take.
 *
 */
export interface PlanningTakeInput {
  /**
   * Those that are no lessons yet, each with its length in minutes.
   */
  lines: TakeLine[];
}
/**
 * A line to take.
 *
 */
export interface TakeLine {
  place: PlanPlaceInput;
  /**
   * How long, in minutes.
   */
  minutes: number;
}
/**
 * A plan to weigh.
 *
 */
export interface PlanningWeighInput {
  plan: AskPlan;
  /**
   * Its lines as they are now.
   */
  lines: PlanPlaceInput[];
}
/**
 * A plan weighed.
 *
 */
export interface PlanningWeighOutput {
  /**
   * Its lines, in the order given, each with what speaks against it.
   */
  lines: PlannedLesson[];
  /**
   * What its courts cost, one amount for each currency.
   */
  cost: string[];
  /**
   * What it comes to: missing, spread, cost in smallest units, distance from what is liked best.
   */
  sums: number[];
}
/**
 * Which visit.
 *
 */
export interface PlanningWishInput {
  visit: VisitId;
}
/**
 * A visit's wish as it stands.
 *
 */
export interface PlanningWishOutput {
  /**
   * What is kept; `None` while nothing was written down.
   */
  wish: VisitWish | null;
  /**
   * In words; empty while nothing was written down.
   */
  words: string;
  /**
   * What became impossible of it since it was written down, a sentence each.
   */
  against: string[];
  /**
   * The visits whose students could share lessons: those whose days meet these, and those that
   * were chosen.
   */
  may_share: MayShare[];
}
/**
 * A price as kept.
 *
 */
export interface Price {
  id: PriceId;
  what: PricedAs;
  /**
   * Its name, or empty.
   */
  words: string;
  /**
   * Where it holds; `None` everywhere.
   */
  facility: FacilityId | null;
  /**
   * The place's name, or empty.
   */
  place: string;
  /**
   * The length of the lesson, or of each lesson; `None` any.
   */
  minutes: number | null;
  /**
   * So many share the lesson.
   */
  sharing: number;
  /**
   * Whether the amount is for each of them.
   */
  each: boolean;
  /**
   * Lessons of a package.
   */
  lessons: number | null;
  /**
   * So many months a package holds; `None` without end.
   */
  months: number | null;
  /**
   * The currency.
   */
  currency: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  since: Day;
  /**
   * The last day; `None` while not known.
   */
  until: Day | null;
  /**
   * All of it in words, as in "Lesson of 60 minutes, 2 sharing, each".
   */
  says: string;
}
/**
 * A price as typed.
 *
 */
export interface PriceForm {
  what: PricedAs;
  /**
   * Its name; needed for anything else.
   */
  words?: string;
  /**
   * Where it holds; left out for everywhere.
   */
  facility?: FacilityId | null;
  /**
   * The length of a lesson in minutes; left out for any.
   */
  minutes?: number | null;
  /**
   * So many share the lesson; left out for one.
   */
  sharing?: number | null;
  /**
   * Whether the amount is for each of them.
   */
  each?: boolean;
  /**
   * Lessons of a package.
   */
  lessons?: number | null;
  /**
   * So many months a package holds; left out for no end.
   */
  months?: number | null;
  /**
   * The currency, an ISO 4217 code.
   */
  currency: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  /**
   * The first day it holds, as YYYY-MM-DD; empty for today, or from the beginning where there is none
   * for the same yet.
   */
  since?: string;
}
/**
 * A price to write down.
 *
 */
export interface PricesAddInput {
  price: PriceForm;
}
/**
 * A price as kept.
 *
 */
export interface PricesAddOutput {
  id: PriceId;
  what: PricedAs;
  /**
   * Its name, or empty.
   */
  words: string;
  /**
   * Where it holds; `None` everywhere.
   */
  facility: FacilityId | null;
  /**
   * The place's name, or empty.
   */
  place: string;
  /**
   * The length of the lesson, or of each lesson; `None` any.
   */
  minutes: number | null;
  /**
   * So many share the lesson.
   */
  sharing: number;
  /**
   * Whether the amount is for each of them.
   */
  each: boolean;
  /**
   * Lessons of a package.
   */
  lessons: number | null;
  /**
   * So many months a package holds; `None` without end.
   */
  months: number | null;
  /**
   * The currency.
   */
  currency: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  since: Day;
  /**
   * The last day; `None` while not known.
   */
  until: Day | null;
  /**
   * All of it in words, as in "Lesson of 60 minutes, 2 sharing, each".
   */
  says: string;
}
/**
 * A tax that no longer counts.
 *
 */
export interface PricesDropTaxInput {
  tax: TaxRuleId;
}
/**
 * What tax counts for a kind of line.
 *
 */
export interface TaxRule {
  id: TaxRuleId;
  /**
   * For which kind of line; `None` every kind.
   */
  what: What | null;
  /**
   * Where; `None` everywhere.
   */
  facility: FacilityId | null;
  /**
   * The place's name, or empty.
   */
  place: string;
  category: Category;
  /**
   * The rate in percent.
   */
  rate: string;
  /**
   * Why no tax is charged; empty where it is.
   */
  why: string;
  since: Day;
  /**
   * The last day; `None` while not known.
   */
  until: Day | null;
}
/**
 * A price to end.
 *
 */
export interface PricesEndInput {
  price: PriceId;
  /**
   * The last day it holds, as YYYY-MM-DD; empty for yesterday.
   */
  until?: string;
}
/**
 * A price as kept.
 *
 */
export interface PricesEndOutput {
  id: PriceId;
  what: PricedAs;
  /**
   * Its name, or empty.
   */
  words: string;
  /**
   * Where it holds; `None` everywhere.
   */
  facility: FacilityId | null;
  /**
   * The place's name, or empty.
   */
  place: string;
  /**
   * The length of the lesson, or of each lesson; `None` any.
   */
  minutes: number | null;
  /**
   * So many share the lesson.
   */
  sharing: number;
  /**
   * Whether the amount is for each of them.
   */
  each: boolean;
  /**
   * Lessons of a package.
   */
  lessons: number | null;
  /**
   * So many months a package holds; `None` without end.
   */
  months: number | null;
  /**
   * The currency.
   */
  currency: string;
  /**
   * The amount, a decimal.
   */
  amount: string;
  since: Day;
  /**
   * The last day; `None` while not known.
   */
  until: Day | null;
  /**
   * All of it in words, as in "Lesson of 60 minutes, 2 sharing, each".
   */
  says: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface PricesListInput {}
/**
 * A tax to set.
 *
 */
export interface PricesSetTaxInput {
  /**
   * For which kind of line; left out for every kind.
   */
  what?: What | null;
  /**
   * Where; left out for everywhere.
   */
  facility?: FacilityId | null;
  category: Category;
  /**
   * The rate in percent; empty for 0.
   */
  rate?: string;
  /**
   * Why no tax is charged.
   */
  why?: string;
  /**
   * The first day it holds, as YYYY-MM-DD; empty: from the beginning.
   */
  since?: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface PricesTaxesInput {}
/**
 * What is kept about a student; the form and the record are the same.
 *
 */
export interface Profile {
  /**
   * Full name.
   */
  name: string;
  /**
   * How a letter addresses the student; empty means by the first name.
   */
  called: string;
  /**
   * E-mail address.
   */
  email: string;
  /**
   * Telephone number.
   */
  phone: string;
  /**
   * The hand, once asked.
   */
  hand: Hand | null;
  /**
   * What is played, once asked.
   */
  plays: Plays | null;
  /**
   * IANA zone where the student lives; empty while not asked.
   */
  zone: string;
  /**
   * Birth date as YYYY-MM-DD; empty while not told.
   */
  born: string;
  language: Language;
  /**
   * The sport pack's id; empty means racquetball.
   */
  sport: string;
  /**
   * The division played in, as the pack or the coach names it; empty while not told.
   */
  division: string;
  /**
   * Minutes on court in a usual week; left out while not known.
   */
  usual_minutes: number | null;
  /**
   * What the student wants, in the student's own words.
   */
  wants: string;
  /**
   * The coach's own notes.
   */
  about: string;
  /**
   * The town the student comes from; empty while not asked.
   */
  home: string;
  /**
   * How the student heard of the coach; empty while not asked.
   */
  heard: string;
  /**
   * The day the student first asked, as YYYY-MM-DD; empty while not known.
   */
  enquired: string;
  /**
   * Who consents for a minor.
   */
  guardian: Contact | null;
  /**
   * Who pays, if not the student.
   */
  payer: Contact | null;
}
/**
 * What is kept about a student; the form and the record are the same.
 *
 */
export interface ProfileInput {
  /**
   * Full name.
   */
  name?: string;
  /**
   * How a letter addresses the student; empty means by the first name.
   */
  called?: string;
  /**
   * E-mail address.
   */
  email?: string;
  /**
   * Telephone number.
   */
  phone?: string;
  /**
   * The hand, once asked.
   */
  hand?: Hand | null;
  /**
   * What is played, once asked.
   */
  plays?: Plays | null;
  /**
   * IANA zone where the student lives; empty while not asked.
   */
  zone?: string;
  /**
   * Birth date as YYYY-MM-DD; empty while not told.
   */
  born?: string;
  language?: Language;
  /**
   * The sport pack's id; empty means racquetball.
   */
  sport?: string;
  /**
   * The division played in, as the pack or the coach names it; empty while not told.
   */
  division?: string;
  /**
   * Minutes on court in a usual week; left out while not known.
   */
  usual_minutes?: number | null;
  /**
   * What the student wants, in the student's own words.
   */
  wants?: string;
  /**
   * The coach's own notes.
   */
  about?: string;
  /**
   * The town the student comes from; empty while not asked.
   */
  home?: string;
  /**
   * How the student heard of the coach; empty while not asked.
   */
  heard?: string;
  /**
   * The day the student first asked, as YYYY-MM-DD; empty while not known.
   */
  enquired?: string;
  /**
   * Who consents for a minor.
   */
  guardian?: ContactInput | null;
  /**
   * Who pays, if not the student.
   */
  payer?: ContactInput | null;
}
/**
 * Which day.
 *
 */
export interface ReportsDaySheetInput {
  /**
   * The day; left out for today.
   */
  day?: Day | null;
}
/**
 * The day sheet.
 *
 */
export interface ReportsDaySheetOutput {
  day: Day;
  /**
   * Who is here, and where: "Harbour Hall, Saltmere · day 2 of Marta Lindqvist's visit".
   */
  here: string[];
  /**
   * Lessons of the day that stand.
   */
  lessons: number;
  /**
   * Their minutes.
   */
  minutes: number;
  /**
   * The first hour after the last lesson that is still to come; `None` when there is none.
   */
  free_from: Time | null;
  /**
   * What must be in place.
   */
  before: SheetLine[];
  /**
   * Today's lessons.
   */
  on: SheetLine[];
  /**
   * What is owed and awaited.
   */
  after: SheetLine[];
  /**
   * Whether the file holds anyone at all.
   */
  empty: boolean;
}
/**
 * A line.
 *
 */
export interface SheetLine {
  /**
   * By when or since when, in words.
   */
  when: string;
  /**
   * Whether it is late.
   */
  late: boolean;
  /**
   * What it is.
   */
  what: string;
  /**
   * Why, or what is known.
   */
  why: string;
  leads: Leads;
  /**
   * The student, if it is about one.
   */
  student: StudentId | null;
  /**
   * The visit, if it is about one.
   */
  visit: VisitId | null;
  /**
   * The lesson, if it is about one.
   */
  lesson: LessonId | null;
}
/**
 * What to find.
 *
 */
export interface ReportsFindInput {
  /**
   * Parts of a name.
   */
  text: string;
}
/**
 * Whose history.
 *
 */
export interface ReportsHistoryInput {
  thing: Thing;
  /**
   * Its id.
   */
  id: string;
  /**
   * Look on from here, as the answer before said.
   */
  before?: number | null;
  /**
   * At most so many acts.
   */
  most?: number;
}
/**
 * A stretch of the past of some rows.
 *
 */
export interface ReportsHistoryOutput {
  /**
   * The acts, newest first.
   */
  acts: Act[];
  /**
   * Where to look on for older ones; `None` at the beginning of the file.
   */
  further: number | null;
}
/**
 * Which visit.
 *
 */
export interface ReportsLoadInput {
  visit: VisitId;
}
/**
 * The load of a visit.
 *
 */
export interface ReportsLoadOutput {
  /**
   * Every day of the visit so far, days of rest among them.
   */
  days: LoadDay[];
  /**
   * The lessons taught, in time.
   */
  sessions: Session[];
  /**
   * Minutes taught.
   */
  minutes: number;
  /**
   * The load of what was rated.
   */
  rated: number;
  /**
   * Total, mean, spread, monotony and strain; `None` while a lesson has no rating, because a
   * missing rating would count as rest.
   */
  load: Load | null;
  /**
   * Beside the usual week; `None` where that is not known.
   */
  usual: Usual | null;
  /**
   * What is to be said about it, a sentence or two each.
   */
  words: string[];
}
/**
 * A lesson that was taught.
 *
 */
export interface Session {
  lesson: LessonId;
  day: Day;
  starts: Time;
  /**
   * Minutes taught.
   */
  minutes: number;
  /**
   * The student's own rating; `None` while not told.
   */
  effort: number | null;
  /**
   * Minutes × effort; `None` without a rating.
   */
  load: number | null;
}
/**
 * Court time beside what is usual.
 *
 */
export interface Usual {
  /**
   * Minutes in a usual week, as the student told.
   */
  week: number;
  /**
   * The part of it that falls on as many days as are counted here, in minutes.
   */
  share: number;
  /**
   * Court time here ÷ that share; `None` where nothing is usual.
   */
  times: number | null;
}
/**
 * Which span, and how much of it.
 *
 */
export interface ReportsSeasonInput {
  /**
   * The first day, as YYYY-MM-DD; left out for twelve months before the last.
   */
  from?: string;
  /**
   * The last day, as YYYY-MM-DD; left out for today.
   */
  to?: string;
  /**
   * Of what moved, only what moved to this: met, kept, slipped or raised; left out for all.
   */
  only?: State | null;
  /**
   * How many of those that moved are given at most, the newest; they are all counted.
   */
  most_moves?: number;
  /**
   * How many of those that wait are given at most; they are all counted.
   */
  most_waits?: number;
}
/**
 * The season.
 *
 */
export interface ReportsSeasonOutput {
  span: Span;
  moved: Moved;
  /**
   * Which, the newest first: as many as were asked for.
   */
  moves: Move[];
  /**
   * How many goals wait for their retest today.
   */
  waiting: number;
  /**
   * What waits: met goals first, and the longest wait first; as many as were asked for.
   */
  waits: Waits[];
  /**
   * Who is expected by today.
   */
  awaited: Awaited[];
  /**
   * Strengths and faults seen in the span, the most frequent first.
   */
  seen: OftenSeen[];
}
/**
 * A goal that waits for its retest.
 *
 */
export interface Waits {
  goal: GoalId;
  criterion: Criterion;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  state: State;
  /**
   * Why, in words.
   */
  why: string;
  visit: VisitId;
  since: Day;
  /**
   * Its title.
   */
  title: string;
}
/**
 * The coach's settings; the form and the record are the same.
 *
 */
export interface SettingsChangeInput {
  /**
   * The coach's name, as letters are signed.
   */
  name?: string;
  /**
   * The coach's e-mail address, which invitations are from.
   */
  email?: string;
  /**
   * Lines under the name in the letterhead: address, telephone, mail.
   */
  letterhead?: string;
  /**
   * The closing of a letter.
   */
  closing?: string;
  /**
   * Whether this file holds the invented sample season.
   */
  sample?: boolean;
}
/**
 * The coach's settings; the form and the record are the same.
 *
 */
export interface SettingsChangeOutput {
  /**
   * The coach's name, as letters are signed.
   */
  name: string;
  /**
   * The coach's e-mail address, which invitations are from.
   */
  email: string;
  /**
   * Lines under the name in the letterhead: address, telephone, mail.
   */
  letterhead: string;
  /**
   * The closing of a letter.
   */
  closing: string;
  /**
   * Whether this file holds the invented sample season.
   */
  sample: boolean;
}
/**
 * An input with nothing in it.
 *
 */
export interface SettingsShowInput {}
/**
 * The coach's settings; the form and the record are the same.
 *
 */
export interface SettingsShowOutput {
  /**
   * The coach's name, as letters are signed.
   */
  name: string;
  /**
   * The coach's e-mail address, which invitations are from.
   */
  email: string;
  /**
   * Lines under the name in the letterhead: address, telephone, mail.
   */
  letterhead: string;
  /**
   * The closing of a letter.
   */
  closing: string;
  /**
   * Whether this file holds the invented sample season.
   */
  sample: boolean;
}
/**
 * A skill to choose.
 *
 */
export interface SkillLine {
  /**
   * Its id in the pack, or of the coach's own.
   */
  id: string;
  /**
   * The group it stands in.
   */
  group: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * What makes a try good.
   */
  good_try: string;
  /**
   * A cue to begin with; empty for none.
   */
  cue: string;
  /**
   * Whether it is the coach's own.
   */
  own: boolean;
}
/**
 * A drill of the coach's own.
 *
 */
export interface SportsAddDrillInput {
  /**
   * The pack's id.
   */
  sport: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * A skill it serves; empty for none.
   */
  skill?: string;
  /**
   * What it is for.
   */
  purpose?: string;
  /**
   * Who stands where, who feeds what.
   */
  layout?: string;
  /**
   * How it is made harder, one step a line, easiest first.
   */
  steps?: string;
}
/**
 * A skill of the coach's own.
 *
 */
export interface SportsAddSkillInput {
  /**
   * The pack's id.
   */
  sport: string;
  /**
   * Its name.
   */
  name: string;
  /**
   * What makes a try good.
   */
  good_try?: string;
}
/**
 * Which sport.
 *
 */
export interface SportsDrillsInput {
  /**
   * The pack's id.
   */
  sport: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface SportsListInput {}
/**
 * Which sport.
 *
 */
export interface SportsShowInput {
  /**
   * The pack's id.
   */
  sport: string;
}
/**
 * The data of one sport.
 *
 */
export interface SportsShowOutput {
  /**
   * A short name that never changes.
   */
  id: string;
  /**
   * The sport, as a person writes it.
   */
  name: string;
  /**
   * The version of the pack, such as `1`.
   */
  version: string;
  unit: Unit;
  /**
   * What the sources are, and what was not found.
   */
  notes: string[];
  /**
   * The groups of skills, in the order they are shown.
   */
  groups: Group[];
  /**
   * The skills.
   */
  skills: Skill[];
  levels: LevelScale;
  /**
   * The names of divisions and levels that associations use; never turned into one another.
   */
  divisions: Division[];
  court: PackCourt;
  /**
   * The rule sets that count points to a game. Which one holds is chosen for each match.
   */
  scoring: RuleSet[];
  /**
   * The rule sets that count points, games and sets.
   */
  set_scoring: SetRuleSet[];
  /**
   * Drills to plan a lesson from.
   */
  drills: Drill[];
  /**
   * Published tests on a court.
   */
  tests: OnCourtTest[];
}
/**
 * Which sport.
 *
 */
export interface SportsSkillsInput {
  /**
   * The pack's id.
   */
  sport: string;
}
/**
 * A run of days at one facility.
 *
 */
export interface Stay {
  facility: FacilityId;
  /**
   * Its name.
   */
  place: string;
  /**
   * Its town, or empty.
   */
  town: string;
  /**
   * Its zone.
   */
  zone: string;
  days: Span;
}
/**
 * A line in the list of people.
 *
 */
export interface StudentLine {
  id: StudentId;
  /**
   * Full name.
   */
  name: string;
  /**
   * The day put away.
   */
  archived: Day | null;
  /**
   * The day of an enquiry from which no visit has come yet.
   */
  asked: Day | null;
}
/**
 * A fact to write down.
 *
 */
export interface StudentsAddFactInput {
  student: StudentId;
  kind: FactKind;
  /**
   * From when, or when, as YYYY-MM-DD; left out for today.
   */
  day?: string;
  /**
   * The fact.
   */
  words: string;
}
/**
 * What is kept about a student; the form and the record are the same.
 *
 */
export interface StudentsAddInput {
  /**
   * Full name.
   */
  name?: string;
  /**
   * How a letter addresses the student; empty means by the first name.
   */
  called?: string;
  /**
   * E-mail address.
   */
  email?: string;
  /**
   * Telephone number.
   */
  phone?: string;
  /**
   * The hand, once asked.
   */
  hand?: Hand | null;
  /**
   * What is played, once asked.
   */
  plays?: Plays | null;
  /**
   * IANA zone where the student lives; empty while not asked.
   */
  zone?: string;
  /**
   * Birth date as YYYY-MM-DD; empty while not told.
   */
  born?: string;
  language?: Language;
  /**
   * The sport pack's id; empty means racquetball.
   */
  sport?: string;
  /**
   * The division played in, as the pack or the coach names it; empty while not told.
   */
  division?: string;
  /**
   * Minutes on court in a usual week; left out while not known.
   */
  usual_minutes?: number | null;
  /**
   * What the student wants, in the student's own words.
   */
  wants?: string;
  /**
   * The coach's own notes.
   */
  about?: string;
  /**
   * The town the student comes from; empty while not asked.
   */
  home?: string;
  /**
   * How the student heard of the coach; empty while not asked.
   */
  heard?: string;
  /**
   * The day the student first asked, as YYYY-MM-DD; empty while not known.
   */
  enquired?: string;
  /**
   * Who consents for a minor.
   */
  guardian?: ContactInput | null;
  /**
   * Who pays, if not the student.
   */
  payer?: ContactInput | null;
}
/**
 * A student as stored.
 *
 */
export interface StudentsAddOutput {
  id: StudentId;
  profile: Profile;
  /**
   * The name a letter uses.
   */
  addressed: string;
  /**
   * Age in years on the coach's calendar today, where the birth date is known.
   */
  age: number | null;
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which student.
 *
 */
export interface StudentsArchiveInput {
  student: StudentId;
}
/**
 * A student as stored.
 *
 */
export interface StudentsArchiveOutput {
  id: StudentId;
  profile: Profile;
  /**
   * The name a letter uses.
   */
  addressed: string;
  /**
   * Age in years on the coach's calendar today, where the birth date is known.
   */
  age: number | null;
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Which student.
 *
 */
export interface StudentsBringBackInput {
  student: StudentId;
}
/**
 * A student as stored.
 *
 */
export interface StudentsBringBackOutput {
  id: StudentId;
  profile: Profile;
  /**
   * The name a letter uses.
   */
  addressed: string;
  /**
   * Age in years on the coach's calendar today, where the birth date is known.
   */
  age: number | null;
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * A fact as it should have been.
 *
 */
export interface StudentsChangeFactInput {
  fact: FactId;
  kind: FactKind;
  /**
   * From when, or when, as YYYY-MM-DD; left out for the day it has.
   */
  day?: string;
  /**
   * The fact.
   */
  words: string;
}
/**
 * A changed profile.
 *
 */
export interface StudentsChangeInput {
  student: StudentId;
  profile: ProfileInput;
}
/**
 * A student as stored.
 *
 */
export interface StudentsChangeOutput {
  id: StudentId;
  profile: Profile;
  /**
   * The name a letter uses.
   */
  addressed: string;
  /**
   * Age in years on the coach's calendar today, where the birth date is known.
   */
  age: number | null;
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * Whose health answers to erase.
 *
 */
export interface StudentsEraseHealthInput {
  student: StudentId;
  /**
   * The student's full name, typed, so that nothing is erased by a slip.
   */
  name_typed: string;
}
/**
 * What was erased of someone, and what is left to do.
 *
 */
export interface StudentsEraseHealthOutput {
  /**
   * What was done, as a sentence.
   */
  words: string;
  /**
   * What is left to do, a sentence each.
   */
  left: string[];
}
/**
 * A student to erase.
 *
 */
export interface StudentsEraseInput {
  student: StudentId;
  /**
   * The student's full name, typed, so that nobody is erased by a slip.
   */
  name_typed: string;
  /**
   * Whether what the accounts need is kept apart.
   */
  keep_accounts?: boolean;
  /**
   * The last day it is kept, as YYYY-MM-DD; left out for the first guess.
   */
  accounts_until?: string;
  /**
   * Why it is kept, in the coach's words.
   */
  reason?: string;
}
/**
 * What was erased, and what is left to do.
 *
 */
export interface StudentsEraseOutput {
  /**
   * What was done, as a sentence.
   */
  words: string;
  /**
   * How many rows went.
   */
  rows: number;
  /**
   * How many steps in the history lost their words.
   */
  acts: number;
  /**
   * How many things are kept for the accounts.
   */
  kept: number;
  mentions: Mentions;
  backups: Backups;
  /**
   * Whether lessons on a server's calendar are to be brought in step.
   */
  calendar: boolean;
  /**
   * What is left to do, a sentence each.
   */
  left: string[];
}
/**
 * Which student.
 *
 */
export interface StudentsErasingInput {
  student: StudentId;
}
/**
 * What is kept about a student, and what erasing would do.
 *
 */
export interface StudentsErasingOutput {
  /**
   * The full name, which is to be typed.
   */
  name: string;
  /**
   * What is kept, kind by kind: all of it would go.
   */
  kinds: KindKept[];
  health: HealthKept;
  /**
   * Until when it is kept, as far as the coach has said.
   */
  until: Due[];
  /**
   * How many lessons are with others too: only this student's part of them would go.
   */
  shared: number;
  /**
   * What could stay for the accounts; `None` when nothing was agreed or offered for money.
   */
  accounts: AccountsStay | null;
  /**
   * What was invoiced and stays in the accounts, as a sentence; empty where nothing was.
   */
  invoiced: string;
  mentions: Mentions;
  backups: Backups;
  /**
   * Why it cannot be done now, as a sentence; empty when it can.
   */
  against: string;
}
/**
 * Which student.
 *
 */
export interface StudentsEverythingInput {
  student: StudentId;
}
/**
 * Everything about one person.
 *
 */
export interface StudentsEverythingOutput {
  /**
   * Whose.
   */
  name: string;
  /**
   * The name of a file or folder for it, without ending.
   */
  file_name: string;
  day: Day;
  /**
   * All rows by table, for a program to read.
   */
  rows: {
    [k: string]: {
      [k: string]: unknown;
    }[];
  };
  /**
   * Names of what the rows refer to and that is not the person's: facilities, courts.
   */
  named: {
    [k: string]: string;
  };
  /**
   * The same as a text, for people.
   */
  text: string;
  /**
   * The documents that belong to it.
   */
  documents: Document[];
}
/**
 * Which student.
 *
 */
export interface StudentsFactsInput {
  student: StudentId;
}
/**
 * What to list.
 *
 */
export interface StudentsListInput {
  /**
   * Parts of a name, each of which must be found in it; empty finds everyone.
   */
  find?: string;
  /**
   * Those put away instead of those current.
   */
  archived?: boolean;
  /**
   * How many at most; 0 means all.
   */
  most?: number;
}
/**
 * Which fact.
 *
 */
export interface StudentsRemoveFactInput {
  fact: FactId;
}
/**
 * Which student.
 *
 */
export interface StudentsShowInput {
  student: StudentId;
}
/**
 * A student as stored.
 *
 */
export interface StudentsShowOutput {
  id: StudentId;
  profile: Profile;
  /**
   * The name a letter uses.
   */
  addressed: string;
  /**
   * Age in years on the coach's calendar today, where the birth date is known.
   */
  age: number | null;
  /**
   * The day put away.
   */
  archived: Day | null;
}
/**
 * One row: up to so long before (or after) something, so much is charged.
 *
 */
export interface TermsRow {
  /**
   * The boundary: hours before a lesson, or minutes played of it.
   */
  at: number;
  /**
   * Whether exactly on the boundary still counts as this row.
   */
  within: boolean;
  /**
   * What is charged, in percent.
   */
  percent: number;
}
/**
 * The terms; the form and the record are the same.
 *
 */
export interface TermsSetInput {
  /**
   * Called off at least so many hours before: the longest first.
   */
  called_off?: TermsRow[];
  /**
   * Called off later than all of these: percent; `None` while not set.
   */
  later?: number | null;
  /**
   * Missed without a word: percent; `None` while not set.
   */
  missed?: number | null;
  /**
   * Broken off by weather or the facility after at most so many minutes: the fewest first. After
   * more, the whole lesson counts.
   */
  broken_off?: TermsRow[];
  /**
   * Whether a prepaid lesson is lost when one that was called off late or missed is charged whole.
   */
  lesson_lost?: boolean;
  /**
   * Days to pay.
   */
  due_days?: number;
  /**
   * Part of a package to be paid before it begins, in percent; `None` for none.
   */
  deposit?: number | null;
  /**
   * Parts in which an invoice may be paid, the first first; the rest by its last day to pay.
   */
  parts?: PartRow[];
  paid_back?: PaidBackAs;
  /**
   * Whether courts are passed on at cost.
   */
  pass_courts?: boolean;
  /**
   * Days after the due day on which a reminder is proposed.
   */
  remind_after?: number[];
  /**
   * Interest that a reminder may tell of, in percent a year, a decimal; empty for none.
   */
  interest?: string;
  /**
   * Percent of prepaid lessons that are expected to be taken; `None` while not set.
   */
  taken?: number | null;
  /**
   * The first day whose lessons are to be settled, as YYYY-MM-DD; empty: all there are.
   */
  since?: string;
}
/**
 * The terms; the form and the record are the same.
 *
 */
export interface TermsSetOutput {
  /**
   * Called off at least so many hours before: the longest first.
   */
  called_off: TermsRow[];
  /**
   * Called off later than all of these: percent; `None` while not set.
   */
  later: number | null;
  /**
   * Missed without a word: percent; `None` while not set.
   */
  missed: number | null;
  /**
   * Broken off by weather or the facility after at most so many minutes: the fewest first. After
   * more, the whole lesson counts.
   */
  broken_off: TermsRow[];
  /**
   * Whether a prepaid lesson is lost when one that was called off late or missed is charged whole.
   */
  lesson_lost: boolean;
  /**
   * Days to pay.
   */
  due_days: number;
  /**
   * Part of a package to be paid before it begins, in percent; `None` for none.
   */
  deposit: number | null;
  /**
   * Parts in which an invoice may be paid, the first first; the rest by its last day to pay.
   */
  parts: PartRow[];
  paid_back: PaidBackAs;
  /**
   * Whether courts are passed on at cost.
   */
  pass_courts: boolean;
  /**
   * Days after the due day on which a reminder is proposed.
   */
  remind_after: number[];
  /**
   * Interest that a reminder may tell of, in percent a year, a decimal; empty for none.
   */
  interest: string;
  /**
   * Percent of prepaid lessons that are expected to be taken; `None` while not set.
   */
  taken: number | null;
  /**
   * The first day whose lessons are to be settled, as YYYY-MM-DD; empty: all there are.
   */
  since: string;
}
/**
 * An input with nothing in it.
 *
 */
export interface TermsShowInput {}
/**
 * The terms; the form and the record are the same.
 *
 */
export interface TermsShowOutput {
  /**
   * Called off at least so many hours before: the longest first.
   */
  called_off: TermsRow[];
  /**
   * Called off later than all of these: percent; `None` while not set.
   */
  later: number | null;
  /**
   * Missed without a word: percent; `None` while not set.
   */
  missed: number | null;
  /**
   * Broken off by weather or the facility after at most so many minutes: the fewest first. After
   * more, the whole lesson counts.
   */
  broken_off: TermsRow[];
  /**
   * Whether a prepaid lesson is lost when one that was called off late or missed is charged whole.
   */
  lesson_lost: boolean;
  /**
   * Days to pay.
   */
  due_days: number;
  /**
   * Part of a package to be paid before it begins, in percent; `None` for none.
   */
  deposit: number | null;
  /**
   * Parts in which an invoice may be paid, the first first; the rest by its last day to pay.
   */
  parts: PartRow[];
  paid_back: PaidBackAs;
  /**
   * Whether courts are passed on at cost.
   */
  pass_courts: boolean;
  /**
   * Days after the due day on which a reminder is proposed.
   */
  remind_after: number[];
  /**
   * Interest that a reminder may tell of, in percent a year, a decimal; empty for none.
   */
  interest: string;
  /**
   * Percent of prepaid lessons that are expected to be taken; `None` while not set.
   */
  taken: number | null;
  /**
   * The first day whose lessons are to be settled, as YYYY-MM-DD; empty: all there are.
   */
  since: string;
}
/**
 * Which figure.
 *
 */
export interface TimetableCountedInput {
  /**
   * The year.
   */
  year: number;
  /**
   * 1 for January; left out for all.
   */
  month?: number | null;
  /**
   * Whose; left out for everyone's.
   */
  student?: StudentId | null;
  what: CountedWhat;
}
/**
 * What a figure counts.
 *
 */
export interface TimetableCountedOutput {
  /**
   * Whose, by name; empty for everyone's.
   */
  name: string;
  /**
   * The visits, where it counts visits.
   */
  visits: Visit[];
  /**
   * The lessons, where it counts lessons.
   */
  lessons: Lesson[];
}
/**
 * A visit as stored.
 *
 */
export interface Visit {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * Which days.
 *
 */
export interface TimetableTripInput {
  first: Day;
  last: Day;
}
/**
 * A run of days, with all that is on them.
 *
 */
export interface TimetableTripOutput {
  days: Span;
  today: Day;
  /**
   * The zones, in order of days.
   */
  zones: string[];
  /**
   * The facilities in order of days.
   */
  stays: Stay[];
  /**
   * Who is in town, the first to come first.
   */
  people: TripPerson[];
  /**
   * Day by day.
   */
  on: TripDay[];
  /**
   * How many lessons, those called off or missed left out.
   */
  lessons: number;
  /**
   * Minutes of them.
   */
  minutes: number;
  /**
   * The minutes that could still be sold.
   */
  free_minutes: number;
  /**
   * The length of the shortest lesson in minutes: no free hours are shorter.
   */
  shortest: number;
  shortest_from: ShortestFrom;
  /**
   * Whether one plan has room for these days.
   */
  can_plan: boolean;
}
/**
 * Someone who is in town on a day of a trip.
 *
 */
export interface TripPerson {
  visit: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * Where the visit is, or empty.
   */
  place: string;
  days: Span;
  stage: Stage;
  /**
   * How many lessons it has on the days of the trip, those called off or missed left out.
   */
  lessons: number;
  /**
   * Minutes of them.
   */
  minutes: number;
  /**
   * How many lessons the whole visit is wished to have; left out when no wish was written down.
   */
  wished: number | null;
}
/**
 * A day of a trip.
 *
 */
export interface TripDay {
  coach: CoachDay;
  /**
   * The facilities, that of the first lesson first.
   */
  places: PlaceOn[];
  /**
   * The way from the facility of the day before.
   */
  travel: TravelTo | null;
  /**
   * The lessons, the first first.
   */
  lessons: LessonOn[];
  /**
   * The minutes that could be sold: those of the free hours, or what the limits leave of them.
   */
  free_minutes: number;
  /**
   * Minutes that the coach's limit leaves of the day; left out without a limit.
   */
  left: number | null;
  /**
   * Why nothing is free; left out when something is.
   */
  nothing: NothingFree | null;
}
/**
 * The way to the first facility of a day, from the last of an earlier one.
 *
 */
export interface TravelTo {
  /**
   * From this facility.
   */
  from: string;
  /**
   * To this one.
   */
  to: string;
  since: Day;
  /**
   * How long it takes; left out when no way was written down.
   */
  minutes: number | null;
}
/**
 * Which week.
 *
 */
export interface TimetableWeekInput {
  /**
   * Any day of it; left out for today.
   */
  day?: Day | null;
}
/**
 * A week: people as rows, its days as columns.
 *
 */
export interface TimetableWeekOutput {
  days: Span;
  today: Day;
  /**
   * The zones of its lessons and visits, in order of days.
   */
  zones: string[];
  /**
   * The coach's seven days.
   */
  coach: CoachDay[];
  /**
   * Everyone who has a lesson, is in town or was offered days, by name.
   */
  people: WeekRow[];
  /**
   * The runs of days on which visits of this week overlap.
   */
  trips: Span[];
  /**
   * The last day before the week with a lesson or someone in town; left out when there is none.
   */
  before: Day | null;
  /**
   * The first such day after it.
   */
  after: Day | null;
  /**
   * Those who are not in it and come later, the first to come first.
   */
  later: ComesLater[];
}
/**
 * A person's week.
 *
 */
export interface WeekRow {
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The seven days.
   */
  days: PersonDay[];
  /**
   * Without a lesson in the week, the day of the next one; left out when none is known.
   */
  next: Day | null;
}
/**
 * Which year.
 *
 */
export interface TimetableYearInput {
  /**
   * The year; left out for this one.
   */
  year?: number | null;
}
/**
 * A year.
 *
 */
export interface TimetableYearOutput {
  /**
   * Which.
   */
  year: number;
  /**
   * Everyone who has something to count, by name.
   */
  people: YearRow[];
  /**
   * Everyone together: the months that have something to count, each lesson once.
   */
  months: MonthFigures[];
  total: Figures;
  /**
   * The year before, where there is something in it or in an earlier one.
   */
  before: number | null;
  /**
   * The year after, where there is something in it or in a later one.
   */
  after: number | null;
}
/**
 * A person's year.
 *
 */
export interface YearRow {
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The months that have something to count.
   */
  months: MonthFigures[];
  total: Figures;
}
/**
 * How long the coach is away.
 *
 */
export interface TripAway {
  /**
   * In minutes.
   */
  minutes: number;
  /**
   * Whether it was said when the coach leaves and is home again; otherwise whole days are counted.
   */
  said: boolean;
  /**
   * The same as a sentence.
   */
  words: string;
}
/**
 * How many more lessons of a kind it takes to reach zero.
 *
 */
export interface TripBreakEven {
  /**
   * So many.
   */
  lessons: number;
  /**
   * Of which kind, in words.
   */
  like: string;
  /**
   * What each would bring, without tax, a decimal.
   */
  each: string;
}
/**
 * A trip in one currency, as it stands beside others.
 *
 */
export interface TripCompared {
  days: Span;
  /**
   * Where its lessons were, in words; empty without any.
   */
  places: string;
  /**
   * Whether it is the one that was asked about.
   */
  this: boolean;
  /**
   * Lessons given.
   */
  lessons: number;
  /**
   * Minutes of them.
   */
  court_minutes: number;
  money: TripMoney;
}
/**
 * What a trip comes to in one currency. Amounts are decimals; below 0 a loss.
 *
 */
export interface TripMoney {
  /**
   * The currency.
   */
  currency: string;
  /**
   * Earned with lessons and courts, without tax.
   */
  earned: string;
  /**
   * Charged to students for travel: shares of costs, and what the coming itself costs them, without
   * tax.
   */
  charged: string;
  /**
   * Noted as costs.
   */
  costs: string;
  /**
   * Earned and charged, less costs.
   */
  result: string;
  /**
   * The result for each hour of lessons given; `None` without any.
   */
  per_court_hour: string | null;
  /**
   * The result for each hour away.
   */
  per_hour_away: string | null;
  /**
   * What is not entered yet and may come on top, without tax; empty when nothing is.
   */
  expected: string;
}
/**
 * Courts of a day at a place, for which no court is noted among the costs of that day.
 *
 */
export interface TripCourts {
  day: Day;
  /**
   * The place.
   */
  place: string;
  /**
   * For so many lessons.
   */
  lessons: number;
  /**
   * What they cost by its rules, a decimal.
   */
  amount: string;
  /**
   * The currency.
   */
  currency: string;
}
/**
 * What a trip would come to in one currency. Amounts are decimals; below 0 a loss.
 *
 */
export interface TripOutlookMoney {
  /**
   * The currency.
   */
  currency: string;
  /**
   * What lessons and courts would earn, without tax.
   */
  earned: string;
  /**
   * What students would be charged for travel, without tax.
   */
  charged: string;
  /**
   * What it would cost.
   */
  costs: string;
  /**
   * What would be left.
   */
  result: string;
  /**
   * That for each hour of lessons; `None` without any.
   */
  per_court_hour: string | null;
  /**
   * That for each hour away.
   */
  per_hour_away: string | null;
  /**
   * How many more lessons it takes to reach zero; none when it is reached, or not known.
   */
  break_even: TripBreakEven[];
}
/**
 * A row of a trip: the rows of a currency add up to its result.
 *
 */
export interface TripRow {
  what: TripRowFor;
  from: TripRowFrom;
  day: Day;
  /**
   * What it is, in words.
   */
  words: string;
  /**
   * How much, a decimal: below 0 what it costs, or what was taken back.
   */
  amount: string;
  /**
   * The currency.
   */
  currency: string;
  /**
   * On which invoice or draft it stands.
   */
  invoice: InvoiceId | null;
  /**
   * Which package it was released from.
   */
  package: PackageId | null;
}
/**
 * Whose courts to note.
 *
 */
export interface TripsNoteCourtsInput {
  first: Day;
  last: Day;
}
/**
 * Which trip, and how long the coach was away.
 *
 */
export interface TripsOthersInput {
  first: Day;
  last: Day;
  /**
   * When the coach leaves home on the first day, HH:MM; empty while not said.
   */
  leaves?: string;
  /**
   * When the coach is home again on the last day; empty while not said.
   */
  returns?: string;
}
/**
 * A trip to look ahead at.
 *
 */
export interface TripsOutlookInput {
  first: Day;
  last: Day;
  /**
   * When the coach leaves home on the first day, HH:MM; empty while not said.
   */
  leaves?: string;
  /**
   * When the coach is home again on the last day; empty while not said.
   */
  returns?: string;
  /**
   * Lines of a plan that are no lessons yet.
   */
  lines?: TakeLine[];
  /**
   * Costs that are expected beyond those noted.
   */
  costs?: ExpectedCost[];
}
/**
 * What a trip would come to.
 *
 */
export interface TripsOutlookOutput {
  days: Span;
  /**
   * Lessons given and to come, a shared one counted once.
   */
  lessons: number;
  /**
   * Minutes of them.
   */
  court_minutes: number;
  away: TripAway;
  /**
   * By currency; none is added to another.
   */
  money: TripOutlookMoney[];
  /**
   * The rows that the figures are made of, by day.
   */
  rows: TripRow[];
  /**
   * What is not known, a sentence each: it is in none of the figures.
   */
  asks: string[];
}
/**
 * Which trip, and how long the coach was away.
 *
 */
export interface TripsResultInput {
  first: Day;
  last: Day;
  /**
   * When the coach leaves home on the first day, HH:MM; empty while not said.
   */
  leaves?: string;
  /**
   * When the coach is home again on the last day; empty while not said.
   */
  returns?: string;
}
/**
 * What a trip comes to.
 *
 */
export interface TripsResultOutput {
  days: Span;
  /**
   * Lessons given, a shared one counted once.
   */
  lessons: number;
  /**
   * Minutes of them, as taught.
   */
  court_minutes: number;
  away: TripAway;
  /**
   * By currency; none is added to another.
   */
  money: TripMoney[];
  /**
   * The rows that the figures are made of, by day.
   */
  rows: TripRow[];
  /**
   * What is not entered yet.
   */
  expected: TripRow[];
  /**
   * What is not known of that, a sentence each.
   */
  asks: string[];
  /**
   * Courts on which lessons were given and that are not among the costs.
   */
  courts: TripCourts[];
}
/**
 * A visit to call off.
 *
 */
export interface VisitsCallOffInput {
  visit: VisitId;
  /**
   * Why.
   */
  reason: string;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsCallOffOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * A change to a visit. An expected visit becomes a planned one by being given its days.
 *
 */
export interface VisitsChangeInput {
  visit: VisitId;
  facility: FacilityId;
  /**
   * The first day, as YYYY-MM-DD.
   */
  first_day: string;
  /**
   * The last day, as YYYY-MM-DD.
   */
  last_day: string;
  /**
   * A word under its column.
   */
  note?: string;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsChangeOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * Which visit.
 *
 */
export interface VisitsCloseInput {
  visit: VisitId;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsCloseOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * A visit that is only expected.
 *
 */
export interface VisitsExpectInput {
  student: StudentId;
  /**
   * Where, if known.
   */
  facility?: FacilityId | null;
  /**
   * The first day on which it may begin, as YYYY-MM-DD; for a month, its first day.
   */
  from: string;
  /**
   * The last such day; for a month, its last day.
   */
  to: string;
  /**
   * A word about it.
   */
  note?: string;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsExpectOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * Which visits to list.
 *
 */
export interface VisitsListInput {
  /**
   * Of this student only.
   */
  student?: StudentId | null;
  /**
   * Ending (or expected) on this day or later.
   */
  from?: Day | null;
  /**
   * Starting (or expected) on this day or earlier.
   */
  to?: Day | null;
}
/**
 * Which visit.
 *
 */
export interface VisitsOpenInput {
  visit: VisitId;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsOpenOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * A visit with its days.
 *
 */
export interface VisitsPlanInput {
  student: StudentId;
  facility: FacilityId;
  /**
   * The first day, as YYYY-MM-DD.
   */
  first_day: string;
  /**
   * The last day, as YYYY-MM-DD.
   */
  last_day: string;
  /**
   * A word under its column.
   */
  note?: string;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsPlanOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * Which visit.
 *
 */
export interface VisitsReopenInput {
  visit: VisitId;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsReopenOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}
/**
 * Which visit.
 *
 */
export interface VisitsShowInput {
  visit: VisitId;
}
/**
 * A visit as stored.
 *
 */
export interface VisitsShowOutput {
  id: VisitId;
  student: StudentId;
  /**
   * The student's name.
   */
  name: string;
  /**
   * The facility, once known.
   */
  facility: FacilityId | null;
  /**
   * Its name and town, or empty.
   */
  place: string;
  /**
   * Its zone, or empty.
   */
  zone: string;
  /**
   * The days, once agreed.
   */
  days: Span | null;
  /**
   * While only expected: the span in which it may fall.
   */
  expected: Span | null;
  stage: Stage;
  /**
   * A word under its column, as in "late flight".
   */
  note: string;
  /**
   * Why it was called off.
   */
  reason: string;
  /**
   * How many goals are at it.
   */
  goals: number;
}

/** Every command: what it takes and what it gives. */
export interface Commands {
  /** Whether the ledger balances */
  'accounts.balanced': { input: AccountsBalancedInput; output: AccountsBalancedOutput };
  /** Lessons that are otherwise now than when they were settled */
  'accounts.changed': { input: AccountsChangedInput; output: AccountsChangedOutput };
  /** Where the money stands */
  'accounts.overview': { input: AccountsOverviewInput; output: AccountsOverviewOutput };
  /** What is owed in lessons, as it stands and as expected */
  'accounts.owed_in_lessons': { input: AccountsOwedInLessonsInput; output: AccountsOwedInLessonsOutput };
  /** How a lesson would be settled */
  'accounts.propose': { input: AccountsProposeInput; output: AccountsProposeOutput };
  /** Lessons settled */
  'accounts.settle': { input: AccountsSettleInput; output: AccountsSettleOutput };
  /** Lessons that are over and not settled */
  'accounts.to_settle': { input: AccountsToSettleInput; output: AccountsToSettleOutput };
  /** A lesson is to be settled again */
  'accounts.unsettle': { input: AccountsUnsettleInput; output: AccountsUnsettleOutput };
  /** What a year comes to */
  'accounts.year': { input: AccountsYearInput; output: AccountsYearOutput };
  /** Assessed */
  'assessments.assess': { input: AssessmentsAssessInput; output: AssessmentsAssessOutput };
  /** A level changed */
  'assessments.change_level': { input: AssessmentsChangeLevelInput; output: AssessmentsChangeLevelOutput };
  /** Norms of a test given */
  'assessments.give_norms': { input: AssessmentsGiveNormsInput; output: AssessmentsGiveNormsOutput };
  /** A student's levels, newest first */
  'assessments.list': { input: AssessmentsListInput; output: AssessmentsListOutput };
  /** The coach's own norms of a sport's tests */
  'assessments.norms': { input: AssessmentsNormsInput; output: AssessmentsNormsOutput };
  /** Test taken */
  'assessments.take_test': { input: AssessmentsTakeTestInput; output: AssessmentsTakeTestOutput };
  /** The published tests a student took */
  'assessments.tests': { input: AssessmentsTestsInput; output: AssessmentsTestsOutput };
  /** Payments of a bank statement entered */
  'bank.enter': { input: BankEnterInput; output: BankEnterOutput };
  /** What a bank statement holds, with what each row may be */
  'bank.read': { input: BankReadInput; output: BankReadOutput };
  /** Courts asked for */
  'bookings.ask': { input: BookingsAskInput; output: BookingsAskOutput };
  /** Court confirmed */
  'bookings.confirm': { input: BookingsConfirmInput; output: BookingsConfirmOutput };
  /** Court given back */
  'bookings.give_back': { input: BookingsGiveBackInput; output: BookingsGiveBackOutput };
  /** The courts that lessons need, and those to give back */
  'bookings.list': { input: BookingsListInput; output: BookingsListOutput };
  /** The words with which courts are asked for */
  'bookings.message': { input: BookingsMessageInput; output: BookingsMessageOutput };
  /** Court refused */
  'bookings.refuse': { input: BookingsRefuseInput; output: BookingsRefuseOutput };
  /** The calendars on a server */
  'calendar.account': { input: CalendarAccountInput; output: CalendarAccountOutput };
  /** The coach’s calendars */
  'calendar.calendars': { input: CalendarCalendarsInput; output: CalendarCalendarsOutput };
  /** The invitations of a visit that are due */
  'calendar.due': { input: CalendarDueInput; output: CalendarDueOutput };
  /** What follows when a lesson was moved or called off */
  'calendar.follows': { input: CalendarFollowsInput; output: CalendarFollowsOutput };
  /** Calendars on a server left */
  'calendar.leave': { input: CalendarLeaveInput; output: CalendarLeaveOutput };
  /** Lesson to be written into the calendar again */
  'calendar.put_back': { input: CalendarPutBackInput; output: CalendarPutBackOutput };
  /** Calendar file read */
  'calendar.read': { input: CalendarReadInput; output: CalendarReadOutput };
  /** Calendar taken out */
  'calendar.remove': { input: CalendarRemoveInput; output: CalendarRemoveOutput };
  /** Calendars on a server chosen */
  'calendar.set_account': { input: CalendarSetAccountInput; output: CalendarSetAccountOutput };
  /** Lesson moved as the calendar says */
  'calendar.take': { input: CalendarTakeInput; output: CalendarTakeOutput };
  /** Invitations written */
  'calendar.written': { input: CalendarWrittenInput; output: CalendarWrittenOutput };
  /** Rate written down */
  'costs.add_rate': { input: CostsAddRateInput; output: CostsAddRateOutput };
  /** Cost changed */
  'costs.change': { input: CostsChangeInput; output: CostsChangeOutput };
  /** What was spent on some days, with sums */
  'costs.list': { input: CostsListInput; output: CostsListOutput };
  /** Cost noted */
  'costs.note': { input: CostsNoteInput; output: CostsNoteOutput };
  /** Costs passed on */
  'costs.pass_on': { input: CostsPassOnInput; output: CostsPassOnOutput };
  /** Rates that were published, to take over */
  'costs.published': { input: CostsPublishedInput; output: CostsPublishedOutput };
  /** Rate put away */
  'costs.put_rate_away': { input: CostsPutRateAwayInput; output: CostsPutRateAwayOutput };
  /** The rates by which drives and days away are counted */
  'costs.rates': { input: CostsRatesInput; output: CostsRatesOutput };
  /** How costs would be split over students */
  'costs.split_proposal': { input: CostsSplitProposalInput; output: CostsSplitProposalOutput };
  /** Cost taken back */
  'costs.take_back': { input: CostsTakeBackInput; output: CostsTakeBackOutput };
  /** Rates taken over */
  'costs.take_published': { input: CostsTakePublishedInput; output: CostsTakePublishedOutput };
  /** Makes a verified copy where the coach chooses */
  'desk.back_up': { input: DeskBackUpInput; output: DeskBackUpOutput };
  /** Where the talk with the server is */
  'desk.calendar_talk': { input: DeskCalendarTalkInput; output: DeskCalendarTalkOutput };
  /** Checks the open file */
  'desk.check': { input: DeskCheckInput; output: DeskCheckOutput };
  /** Lets the coach choose a coach file, and opens it */
  'desk.choose': { input: DeskChooseInput; output: DeskChooseOutput };
  /** Closes the coach file */
  'desk.close': { input: DeskCloseInput; output: DeskCloseOutput };
  /** Makes an empty coach file and opens it */
  'desk.create': { input: DeskCreateInput; output: DeskCreateOutput };
  /** Begins to bring the calendars on a server in step */
  'desk.exchange_calendars': { input: DeskExchangeCalendarsInput; output: DeskExchangeCalendarsOutput };
  /** Begins to look for calendars on a server */
  'desk.find_calendars': { input: DeskFindCalendarsInput; output: DeskFindCalendarsOutput };
  /** Forgets the password of the mail account */
  'desk.forget_mail': { input: DeskForgetMailInput; output: DeskForgetMailOutput };
  /** Whether this machine keeps passwords */
  'desk.keychain': { input: DeskKeychainInput; output: DeskKeychainOutput };
  /** Leaves the server, and forgets its password */
  'desk.leave_calendars': { input: DeskLeaveCalendarsInput; output: DeskLeaveCalendarsOutput };
  /** What lies on the desk */
  'desk.look': { input: DeskLookInput; output: DeskLookOutput };
  /** Begins to make a calendar on a server */
  'desk.make_calendar': { input: DeskMakeCalendarInput; output: DeskMakeCalendarOutput };
  /** Opens a coach file */
  'desk.open': { input: DeskOpenInput; output: DeskOpenOutput };
  /** Opens the court card of a lesson */
  'desk.open_card': { input: DeskOpenCardInput; output: DeskOpenCardOutput };
  /** Opens the page of a visit's home plan */
  'desk.open_home_plan': { input: DeskOpenHomePlanInput; output: DeskOpenHomePlanOutput };
  /** Opens an issued letter's document */
  'desk.open_letter': { input: DeskOpenLetterInput; output: DeskOpenLetterOutput };
  /** Opens an invoice, a receipt, a statement or a year */
  'desk.open_money_paper': { input: DeskOpenMoneyPaperInput; output: DeskOpenMoneyPaperOutput };
  /** Opens a notice, a report, a scan or the questions on paper */
  'desk.open_sheet': { input: DeskOpenSheetInput; output: DeskOpenSheetOutput };
  /** Documents on this machine whose name has a student's in it */
  'desk.papers': { input: DeskPapersInput; output: DeskPapersOutput };
  /** Lets the coach choose a calendar file, and reads it */
  'desk.read_calendar': { input: DeskReadCalendarInput; output: DeskReadCalendarOutput };
  /** Puts a chosen backup in the open file's place */
  'desk.restore': { input: DeskRestoreInput; output: DeskRestoreOutput };
  /** Opens the sample season, making it first if need be */
  'desk.sample': { input: DeskSampleInput; output: DeskSampleOutput };
  /** Saves a calendar file of lessons where the coach chooses */
  'desk.save_calendar': { input: DeskSaveCalendarInput; output: DeskSaveCalendarOutput };
  /** Saves the court card of a lesson where the coach chooses */
  'desk.save_card': { input: DeskSaveCardInput; output: DeskSaveCardOutput };
  /** Saves what was spent on some days as a table where the coach chooses */
  'desk.save_costs': { input: DeskSaveCostsInput; output: DeskSaveCostsOutput };
  /** Saves a copy of everything about one student, with their documents, into a folder */
  'desk.save_everything': { input: DeskSaveEverythingInput; output: DeskSaveEverythingOutput };
  /** Saves the page of a visit's home plan where the coach chooses */
  'desk.save_home_plan': { input: DeskSaveHomePlanInput; output: DeskSaveHomePlanOutput };
  /** Saves an issued letter's document where the coach chooses */
  'desk.save_letter': { input: DeskSaveLetterInput; output: DeskSaveLetterOutput };
  /** Saves a message as a file where the coach chooses */
  'desk.save_message': { input: DeskSaveMessageInput; output: DeskSaveMessageOutput };
  /** Saves a part of a message where the coach chooses */
  'desk.save_message_part': { input: DeskSaveMessagePartInput; output: DeskSaveMessagePartOutput };
  /** Saves an invoice, a receipt, a statement or a year where the coach chooses */
  'desk.save_money_paper': { input: DeskSaveMoneyPaperInput; output: DeskSaveMoneyPaperOutput };
  /** Saves a page that a student fills in at home where the coach chooses */
  'desk.save_page': { input: DeskSavePageInput; output: DeskSavePageOutput };
  /** Saves a notice, a report, a scan or the questions on paper where the coach chooses */
  'desk.save_sheet': { input: DeskSaveSheetInput; output: DeskSaveSheetOutput };
  /** Hands over what was released, on a thread of its own */
  'desk.send': { input: DeskSendInput; output: DeskSendOutput };
  /** Sends a trial to the coach */
  'desk.send_trial': { input: DeskSendTrialInput; output: DeskSendTrialOutput };
  /** How far handing over has come */
  'desk.sending': { input: DeskSendingInput; output: DeskSendingOutput };
  /** Stops the talk with the server */
  'desk.stop_calendar_talk': { input: DeskStopCalendarTalkInput; output: DeskStopCalendarTalkOutput };
  /** Stops handing over, after the message under way */
  'desk.stop_sending': { input: DeskStopSendingInput; output: DeskStopSendingOutput };
  /** Writes the invitations of a visit that are due, each into a file of its own */
  'desk.write_invitations': { input: DeskWriteInvitationsInput; output: DeskWriteInvitationsOutput };
  /** The copies of the file, and when they lapse */
  'erasing.backups': { input: ErasingBackupsInput; output: ErasingBackupsOutput };
  /** How long backups are kept */
  'erasing.keep_backups_for': { input: ErasingKeepBackupsForInput; output: ErasingKeepBackupsForOutput };
  /** What is kept for the accounts of people who were erased */
  'erasing.kept_for_accounts': { input: ErasingKeptForAccountsInput; output: ErasingKeptForAccountsOutput };
  /** A record for the accounts erased */
  'erasing.let_go': { input: ErasingLetGoInput; output: ErasingLetGoOutput };
  /** What a CSV file of a season holds */
  'exchange.read_csv': { input: ExchangeReadCsvInput; output: ExchangeReadCsvOutput };
  /** A season taken from a CSV file */
  'exchange.take_csv': { input: ExchangeTakeCsvInput; output: ExchangeTakeCsvOutput };
  /** Facility added */
  'facilities.add': { input: FacilitiesAddInput; output: FacilitiesAddOutput };
  /** Court added */
  'facilities.add_court': { input: FacilitiesAddCourtInput; output: FacilitiesAddCourtOutput };
  /** Facility put away */
  'facilities.archive': { input: FacilitiesArchiveInput; output: FacilitiesArchiveOutput };
  /** Court put away or brought back */
  'facilities.archive_court': { input: FacilitiesArchiveCourtInput; output: FacilitiesArchiveCourtOutput };
  /** Facility brought back */
  'facilities.bring_back': { input: FacilitiesBringBackInput; output: FacilitiesBringBackOutput };
  /** A facility’s desk and where to turn in an emergency */
  'facilities.card': { input: FacilitiesCardInput; output: FacilitiesCardOutput };
  /** Facility changed */
  'facilities.change': { input: FacilitiesChangeInput; output: FacilitiesChangeOutput };
  /** Court changed */
  'facilities.change_court': { input: FacilitiesChangeCourtInput; output: FacilitiesChangeCourtOutput };
  /** Facilities by name, with their courts */
  'facilities.list': { input: FacilitiesListInput; output: FacilitiesListOutput };
  /** A facility’s rules of booking */
  'facilities.rules': { input: FacilitiesRulesInput; output: FacilitiesRulesOutput };
  /** Emergency card written */
  'facilities.set_card': { input: FacilitiesSetCardInput; output: FacilitiesSetCardOutput };
  /** Facility’s rules written down */
  'facilities.set_rules': { input: FacilitiesSetRulesInput; output: FacilitiesSetRulesOutput };
  /** Permission to teach noted */
  'facilities.set_teaching': { input: FacilitiesSetTeachingInput; output: FacilitiesSetTeachingOutput };
  /** One facility with its courts */
  'facilities.show': { input: FacilitiesShowInput; output: FacilitiesShowOutput };
  /** Whether the coach may teach at a facility */
  'facilities.teaching': { input: FacilitiesTeachingInput; output: FacilitiesTeachingOutput };
  /** What a facility’s rules say of one booking */
  'facilities.terms': { input: FacilitiesTermsInput; output: FacilitiesTermsOutput };
  /** The time zones, by IANA name */
  'facilities.zones': { input: FacilitiesZonesInput; output: FacilitiesZonesOutput };
  /** Decisions taken as proposed */
  'goals.accept': { input: GoalsAcceptInput; output: GoalsAcceptOutput };
  /** New words for a goal */
  'goals.change_words': { input: GoalsChangeWordsInput; output: GoalsChangeWordsOutput };
  /** A student's carry chart */
  'goals.chart': { input: GoalsChartInput; output: GoalsChartOutput };
  /** The cue landed */
  'goals.cue_landed': { input: GoalsCueLandedInput; output: GoalsCueLandedOutput };
  /** Decision taken */
  'goals.decide': { input: GoalsDecideInput; output: GoalsDecideOutput };
  /** Block ended */
  'goals.end_block': { input: GoalsEndBlockInput; output: GoalsEndBlockOutput };
  /** Total entered */
  'goals.enter_total': { input: GoalsEnterTotalInput; output: GoalsEnterTotalOutput };
  /** Reasons for misses */
  'goals.give_reasons': { input: GoalsGiveReasonsInput; output: GoalsGiveReasonsOutput };
  /** A note written */
  'goals.jot': { input: GoalsJotInput; output: GoalsJotOutput };
  /** The quick notes of a visit */
  'goals.jottings': { input: GoalsJottingsInput; output: GoalsJottingsOutput };
  /** A student's goals by priority */
  'goals.list': { input: GoalsListInput; output: GoalsListOutput };
  /** The kept goal a visit offers a look back at */
  'goals.look_back': { input: GoalsLookBackInput; output: GoalsLookBackOutput };
  /** The goals worked on at a visit */
  'goals.on_court': { input: GoalsOnCourtInput; output: GoalsOnCourtOutput };
  /** What is proposed for each goal at a visit's end */
  'goals.proposals': { input: GoalsProposalsInput; output: GoalsProposalsOutput };
  /** Goal raised */
  'goals.raise': { input: GoalsRaiseInput; output: GoalsRaiseOutput };
  /** Goals put in a new order */
  'goals.rank': { input: GoalsRankInput; output: GoalsRankOutput };
  /** The reasons given for a student's misses */
  'goals.reasons': { input: GoalsReasonsInput; output: GoalsReasonsOutput };
  /** Goal set */
  'goals.set': { input: GoalsSetInput; output: GoalsSetOutput };
  /** One goal with where it stands */
  'goals.show': { input: GoalsShowInput; output: GoalsShowOutput };
  /** Block started */
  'goals.start_block': { input: GoalsStartBlockInput; output: GoalsStartBlockOutput };
  /** A try taken back */
  'goals.take_back': { input: GoalsTakeBackInput; output: GoalsTakeBackOutput };
  /** A try counted */
  'goals.touch': { input: GoalsTouchInput; output: GoalsTouchOutput };
  /** What a criterion means for players of different strength */
  'goals.weigh': { input: GoalsWeighInput; output: GoalsWeighOutput };
  /** The home plan of the visit before, with what was told */
  'home.last': { input: HomeLastInput; output: HomeLastOutput };
  /** Home plan */
  'home.plan': { input: HomePlanInput; output: HomePlanOutput };
  /** The home plan of a visit, or what one would begin with */
  'home.show': { input: HomeShowInput; output: HomeShowOutput };
  /** As told by the student */
  'home.tell': { input: HomeTellInput; output: HomeTellOutput };
  /** Notice acknowledged */
  'intake.acknowledge_notice': { input: IntakeAcknowledgeNoticeInput; output: IntakeAcknowledgeNoticeOutput };
  /** What was acknowledged for a student */
  'intake.acknowledgements': { input: IntakeAcknowledgementsInput; output: IntakeAcknowledgementsOutput };
  /** Own paper added */
  'intake.add_certificate': { input: IntakeAddCertificateInput; output: IntakeAddCertificateOutput };
  /** Added to an incident report */
  'intake.add_to_incident': { input: IntakeAddToIncidentInput; output: IntakeAddToIncidentOutput };
  /** Readiness questions answered */
  'intake.answer_readiness': { input: IntakeAnswerReadinessInput; output: IntakeAnswerReadinessOutput };
  /** Own paper put away */
  'intake.archive_certificate': {
    input: IntakeArchiveCertificateInput;
    output: IntakeArchiveCertificateOutput;
  };
  /** Notice put away */
  'intake.archive_notice': { input: IntakeArchiveNoticeInput; output: IntakeArchiveNoticeOutput };
  /** The coach’s own papers */
  'intake.certificates': { input: IntakeCertificatesInput; output: IntakeCertificatesOutput };
  /** Own paper changed */
  'intake.change_certificate': { input: IntakeChangeCertificateInput; output: IntakeChangeCertificateOutput };
  /** Incident changed */
  'intake.change_incident': { input: IntakeChangeIncidentInput; output: IntakeChangeIncidentOutput };
  /** Injury changed */
  'intake.change_injury': { input: IntakeChangeInjuryInput; output: IntakeChangeInjuryOutput };
  /** What professionals wrote about a student */
  'intake.clearances': { input: IntakeClearancesInput; output: IntakeClearancesOutput };
  /** A student’s consents, one by one */
  'intake.consents': { input: IntakeConsentsInput; output: IntakeConsentsOutput };
  /** The words a notice begins with */
  'intake.draft_notice': { input: IntakeDraftNoticeInput; output: IntakeDraftNoticeOutput };
  /** An incident report erased */
  'intake.erase_incident': { input: IntakeEraseIncidentInput; output: IntakeEraseIncidentOutput };
  /** The standards of eyewear */
  'intake.eyewear': { input: IntakeEyewearInput; output: IntakeEyewearOutput };
  /** The facilities’ forms a student signed */
  'intake.forms': { input: IntakeFormsInput; output: IntakeFormsOutput };
  /** Consent answered */
  'intake.give_consent': { input: IntakeGiveConsentInput; output: IntakeGiveConsentOutput };
  /** Went on although not ready */
  'intake.go_on': { input: IntakeGoOnInput; output: IntakeGoOnOutput };
  /** The consents of guests */
  'intake.guest_consents': { input: IntakeGuestConsentsInput; output: IntakeGuestConsentsOutput };
  /** One incident report */
  'intake.incident': { input: IntakeIncidentInput; output: IntakeIncidentOutput };
  /** The incident reports, the newest first */
  'intake.incidents': { input: IntakeIncidentsInput; output: IntakeIncidentsOutput };
  /** A student’s injuries and restrictions */
  'intake.injuries': { input: IntakeInjuriesInput; output: IntakeInjuriesOutput };
  /** Intake page made */
  'intake.make_page': { input: IntakeMakePageInput; output: IntakeMakePageOutput };
  /** The rules for minors */
  'intake.minor_rules': { input: IntakeMinorRulesInput; output: IntakeMinorRulesOutput };
  /** Injury written down */
  'intake.note_injury': { input: IntakeNoteInjuryInput; output: IntakeNoteInjuryOutput };
  /** One notice at its newest version */
  'intake.notice': { input: IntakeNoticeInput; output: IntakeNoticeOutput };
  /** The notices, each at its newest version */
  'intake.notices': { input: IntakeNoticesInput; output: IntakeNoticesOutput };
  /** The notices a student is asked for, and what came of them */
  'intake.notices_needed': { input: IntakeNoticesNeededInput; output: IntakeNoticesNeededOutput };
  /** A facility’s own policy */
  'intake.policy': { input: IntakePolicyInput; output: IntakePolicyOutput };
  /** Notice published */
  'intake.publish_notice': { input: IntakePublishNoticeInput; output: IntakePublishNoticeOutput };
  /** What a file of answers says */
  'intake.read_answers': { input: IntakeReadAnswersInput; output: IntakeReadAnswersOutput };
  /** A student’s answers to the readiness questions, the newest first */
  'intake.readiness': { input: IntakeReadinessInput; output: IntakeReadinessOutput };
  /** How everyone on a lesson stands before it */
  'intake.ready': { input: IntakeReadyInput; output: IntakeReadyOutput };
  /** How people stand where and when a plan has them */
  'intake.ready_at': { input: IntakeReadyAtInput; output: IntakeReadyAtOutput };
  /** How a student stands before a first lesson */
  'intake.ready_person': { input: IntakeReadyPersonInput; output: IntakeReadyPersonOutput };
  /** Clearance recorded */
  'intake.record_clearance': { input: IntakeRecordClearanceInput; output: IntakeRecordClearanceOutput };
  /** Incident written down */
  'intake.record_incident': { input: IntakeRecordIncidentInput; output: IntakeRecordIncidentOutput };
  /** Intake gone through */
  'intake.set': { input: IntakeSetInput; output: IntakeSetOutput };
  /** Rules for minors written down */
  'intake.set_minor_rules': { input: IntakeSetMinorRulesInput; output: IntakeSetMinorRulesOutput };
  /** Facility’s policy written down */
  'intake.set_policy': { input: IntakeSetPolicyInput; output: IntakeSetPolicyOutput };
  /** What was asked of a student before court */
  'intake.show': { input: IntakeShowInput; output: IntakeShowOutput };
  /** Facility’s form signed */
  'intake.sign_form': { input: IntakeSignFormInput; output: IntakeSignFormOutput };
  /** Incident report signed */
  'intake.sign_incident': { input: IntakeSignIncidentInput; output: IntakeSignIncidentOutput };
  /** Answers taken */
  'intake.take_answers': { input: IntakeTakeAnswersInput; output: IntakeTakeAnswersOutput };
  /** Clearance withdrawn */
  'intake.withdraw_clearance': { input: IntakeWithdrawClearanceInput; output: IntakeWithdrawClearanceOutput };
  /** Consent withdrawn */
  'intake.withdraw_consent': { input: IntakeWithdrawConsentInput; output: IntakeWithdrawConsentOutput };
  /** Draft changed */
  'invoices.change': { input: InvoicesChangeInput; output: InvoicesChangeOutput };
  /** Credit note issued */
  'invoices.credit': { input: InvoicesCreditInput; output: InvoicesCreditOutput };
  /** Draft discarded */
  'invoices.discard': { input: InvoicesDiscardInput; output: InvoicesDiscardOutput };
  /** Invoice begun */
  'invoices.draft': { input: InvoicesDraftInput; output: InvoicesDraftOutput };
  /** The parts in which a draft would be paid */
  'invoices.in_parts': { input: InvoicesInPartsInput; output: InvoicesInPartsOutput };
  /** Invoice issued */
  'invoices.issue': { input: InvoicesIssueInput; output: InvoicesIssueOutput };
  /** Invoices and credit notes */
  'invoices.list': { input: InvoicesListInput; output: InvoicesListOutput };
  /** Reminder written */
  'invoices.remind': { input: InvoicesRemindInput; output: InvoicesRemindOutput };
  /** Who issues invoices */
  'invoices.seller': { input: InvoicesSellerInput; output: InvoicesSellerOutput };
  /** Who issues invoices is set */
  'invoices.set_seller': { input: InvoicesSetSellerInput; output: InvoicesSetSellerOutput };
  /** An invoice or credit note */
  'invoices.show': { input: InvoicesShowInput; output: InvoicesShowOutput };
  /** What a reminder of an overdue invoice would say */
  'invoices.would_remind': { input: InvoicesWouldRemindInput; output: InvoicesWouldRemindOutput };
  /** The newest acts, newest first */
  'journal.newest': { input: JournalNewestInput; output: JournalNewestOutput };
  /** Take an act back */
  'journal.undo': { input: JournalUndoInput; output: JournalUndoOutput };
  /** What has been kept longer than the coach said */
  'keeping.due': { input: KeepingDueInput; output: KeepingDueOutput };
  /** How long things are kept is noted */
  'keeping.set_spans': { input: KeepingSetSpansInput; output: KeepingSetSpansOutput };
  /** How long things are kept */
  'keeping.spans': { input: KeepingSpansInput; output: KeepingSpansOutput };
  /** Lesson called off */
  'lessons.call_off': { input: LessonsCallOffInput; output: LessonsCallOffOutput };
  /** Lesson moved */
  'lessons.change': { input: LessonsChangeInput; output: LessonsChangeOutput };
  /** Clashes of a time with the lessons that stand */
  'lessons.clashes': { input: LessonsClashesInput; output: LessonsClashesOutput };
  /** Lesson cut short */
  'lessons.cut_short': { input: LessonsCutShortInput; output: LessonsCutShortOutput };
  /** Court card entered */
  'lessons.enter_card': { input: LessonsEnterCardInput; output: LessonsEnterCardOutput };
  /** Lesson given */
  'lessons.give': { input: LessonsGiveInput; output: LessonsGiveOutput };
  /** Template kept */
  'lessons.keep_template': { input: LessonsKeepTemplateInput; output: LessonsKeepTemplateOutput };
  /** Lessons in time */
  'lessons.list': { input: LessonsListInput; output: LessonsListOutput };
  /** Lesson missed */
  'lessons.miss': { input: LessonsMissInput; output: LessonsMissOutput };
  /** Lesson note written */
  'lessons.note': { input: LessonsNoteInput; output: LessonsNoteOutput };
  /** Lesson planned */
  'lessons.plan': { input: LessonsPlanInput; output: LessonsPlanOutput };
  /** A lesson's plan */
  'lessons.plan_lines': { input: LessonsPlanLinesInput; output: LessonsPlanLinesOutput };
  /** A plan proposed for a lesson */
  'lessons.propose_plan': { input: LessonsProposePlanInput; output: LessonsProposePlanOutput };
  /** Effort rated by the student */
  'lessons.rate_effort': { input: LessonsRateEffortInput; output: LessonsRateEffortOutput };
  /** Lesson planned */
  'lessons.set_plan_lines': { input: LessonsSetPlanLinesInput; output: LessonsSetPlanLinesOutput };
  /** One lesson */
  'lessons.show': { input: LessonsShowInput; output: LessonsShowOutput };
  /** Templates of lesson plans, by name */
  'lessons.templates': { input: LessonsTemplatesInput; output: LessonsTemplatesOutput };
  /** A template as a plan for a lesson */
  'lessons.use_template': { input: LessonsUseTemplateInput; output: LessonsUseTemplateOutput };
  /** Language of letters chosen */
  'letters.choose_language': { input: LettersChooseLanguageInput; output: LettersChooseLanguageOutput };
  /** Letter composed anew from the record */
  'letters.compose_anew': { input: LettersComposeAnewInput; output: LettersComposeAnewOutput };
  /** The letter of a visit as it stands, with its pages */
  'letters.draft': { input: LettersDraftInput; output: LettersDraftOutput };
  /** Letter edited */
  'letters.edit': { input: LettersEditInput; output: LettersEditOutput };
  /** Letter issued */
  'letters.issue': { input: LettersIssueInput; output: LettersIssueOutput };
  /** Letters owed, in draft and issued */
  'letters.list': { input: LettersListInput; output: LettersListOutput };
  /** An issued letter with its document */
  'letters.show': { input: LettersShowInput; output: LettersShowOutput };
  /** Strengths and faults seen of a student */
  'observations.list': { input: ObservationsListInput; output: ObservationsListOutput };
  /** Made a goal of what was seen */
  'observations.make_goal': { input: ObservationsMakeGoalInput; output: ObservationsMakeGoalOutput };
  /** Seen */
  'observations.see': { input: ObservationsSeeInput; output: ObservationsSeeOutput };
  /** Seen again */
  'observations.see_again': { input: ObservationsSeeAgainInput; output: ObservationsSeeAgainOutput };
  /** Offer answered */
  'offers.answer': { input: OffersAnswerInput; output: OffersAnswerOutput };
  /** The offer of a visit, before it is made */
  'offers.draft': { input: OffersDraftInput; output: OffersDraftOutput };
  /** The offers of a visit, and what changed since */
  'offers.list': { input: OffersListInput; output: OffersListOutput };
  /** Visit offered */
  'offers.make': { input: OffersMakeInput; output: OffersMakeOutput };
  /** Rates and terms written down */
  'offers.set_terms': { input: OffersSetTermsInput; output: OffersSetTermsOutput };
  /** Rates by length and the coach’s terms */
  'offers.terms': { input: OffersTermsInput; output: OffersTermsOutput };
  /** The mail account */
  'outtray.account': { input: OuttrayAccountInput; output: OuttrayAccountOutput };
  /** Message sent again */
  'outtray.again': { input: OuttrayAgainInput; output: OuttrayAgainOutput };
  /** File added to a message */
  'outtray.attach': { input: OuttrayAttachInput; output: OuttrayAttachOutput };
  /** Message changed */
  'outtray.edit': { input: OuttrayEditInput; output: OuttrayEditOutput };
  /** What may be written now */
  'outtray.follow_ups': { input: OuttrayFollowUpsInput; output: OuttrayFollowUpsOutput };
  /** Invoice issued into the out-tray */
  'outtray.issue_invoice': { input: OuttrayIssueInvoiceInput; output: OuttrayIssueInvoiceOutput };
  /** Letter issued into the out-tray */
  'outtray.issue_letter': { input: OuttrayIssueLetterInput; output: OuttrayIssueLetterOutput };
  /** Not written this time */
  'outtray.leave_follow_up': { input: OuttrayLeaveFollowUpInput; output: OuttrayLeaveFollowUpOutput };
  /** What is in the out-tray, and what was */
  'outtray.list': { input: OuttrayListInput; output: OuttrayListOutput };
  /** A message as it arrives */
  'outtray.look': { input: OuttrayLookInput; output: OuttrayLookOutput };
  /** What went out about an invoice */
  'outtray.of_invoice': { input: OuttrayOfInvoiceInput; output: OuttrayOfInvoiceOutput };
  /** What went out about a student */
  'outtray.of_student': { input: OuttrayOfStudentInput; output: OuttrayOfStudentOutput };
  /** Put into the out-tray */
  'outtray.put': { input: OuttrayPutInput; output: OuttrayPutOutput };
  /** Messages released */
  'outtray.release': { input: OuttrayReleaseInput; output: OuttrayReleaseOutput };
  /** When what is proposed to be written */
  'outtray.rules': { input: OuttrayRulesInput; output: OuttrayRulesOutput };
  /** Mail account set */
  'outtray.set_account': { input: OuttraySetAccountInput; output: OuttraySetAccountOutput };
  /** Rules of writing set */
  'outtray.set_rules': { input: OuttraySetRulesInput; output: OuttraySetRulesOutput };
  /** Text of messages changed */
  'outtray.set_text': { input: OuttraySetTextInput; output: OuttraySetTextOutput };
  /** One message with what became of it */
  'outtray.show': { input: OuttrayShowInput; output: OuttrayShowOutput };
  /** File taken off a message */
  'outtray.take_off': { input: OuttrayTakeOffInput; output: OuttrayTakeOffOutput };
  /** Message told in another way */
  'outtray.tell': { input: OuttrayTellInput; output: OuttrayTellOutput };
  /** The texts messages begin with */
  'outtray.texts': { input: OuttrayTextsInput; output: OuttrayTextsOutput };
  /** Message withdrawn */
  'outtray.withdraw': { input: OuttrayWithdrawInput; output: OuttrayWithdrawOutput };
  /** Something added to the coach’s own time */
  'own_time.add': { input: OwnTimeAddInput; output: OwnTimeAddOutput };
  /** Something changed in the coach’s own time */
  'own_time.change': { input: OwnTimeChangeInput; output: OwnTimeChangeOutput };
  /** What takes the coach’s time besides lessons */
  'own_time.list': { input: OwnTimeListInput; output: OwnTimeListOutput };
  /** Something taken out of the coach’s own time */
  'own_time.remove': { input: OwnTimeRemoveInput; output: OwnTimeRemoveOutput };
  /** The coach’s own week written down */
  'own_time.set': { input: OwnTimeSetInput; output: OwnTimeSetOutput };
  /** The coach’s own week and its limits */
  'own_time.show': { input: OwnTimeShowInput; output: OwnTimeShowOutput };
  /** New last day for a package */
  'packages.extend': { input: PackagesExtendInput; output: PackagesExtendOutput };
  /** Package given back */
  'packages.give_back': { input: PackagesGiveBackInput; output: PackagesGiveBackOutput };
  /** Lessons on top of a package */
  'packages.give_bonus': { input: PackagesGiveBonusInput; output: PackagesGiveBonusOutput };
  /** What is left of a package runs out */
  'packages.lapse': { input: PackagesLapseInput; output: PackagesLapseOutput };
  /** Packages and what they owe */
  'packages.list': { input: PackagesListInput; output: PackagesListOutput };
  /** Lessons moved to somebody else */
  'packages.move_lessons': { input: PackagesMoveLessonsInput; output: PackagesMoveLessonsOutput };
  /** Package put on an invoice */
  'packages.sell': { input: PackagesSellInput; output: PackagesSellOutput };
  /** A package with its history */
  'packages.show': { input: PackagesShowInput; output: PackagesShowOutput };
  /** What giving a package back would come to */
  'packages.would_give_back': { input: PackagesWouldGiveBackInput; output: PackagesWouldGiveBackOutput };
  /** Payer added */
  'payers.add': { input: PayersAddInput; output: PayersAddOutput };
  /** Payer changed */
  'payers.change': { input: PayersChangeInput; output: PayersChangeOutput };
  /** Payer chosen */
  'payers.choose': { input: PayersChooseInput; output: PayersChooseOutput };
  /** Whoever pays */
  'payers.list': { input: PayersListInput; output: PayersListOutput };
  /** Who pays for a student */
  'payers.of_student': { input: PayersOfStudentInput; output: PayersOfStudentOutput };
  /** One who pays */
  'payers.show': { input: PayersShowInput; output: PayersShowOutput };
  /** The account of a payer */
  'payments.account': { input: PaymentsAccountInput; output: PaymentsAccountOutput };
  /** Money used for an invoice */
  'payments.apply': { input: PaymentsApplyInput; output: PaymentsApplyOutput };
  /** Money paid back */
  'payments.pay_back': { input: PaymentsPayBackInput; output: PaymentsPayBackOutput };
  /** Payment entered */
  'payments.receive': { input: PaymentsReceiveInput; output: PaymentsReceiveOutput };
  /** An entry taken back */
  'payments.take_back': { input: PaymentsTakeBackInput; output: PaymentsTakeBackOutput };
  /** What is open is given up */
  'payments.write_off': { input: PaymentsWriteOffInput; output: PaymentsWriteOffOutput };
  /** Begins the best plan for everyone who comes on some days */
  'planning.begin': { input: PlanningBeginInput; output: PlanningBeginOutput };
  /** A student’s wish taken away */
  'planning.clear_wish': { input: PlanningClearWishInput; output: PlanningClearWishOutput };
  /** How far a plan is */
  'planning.look': { input: PlanningLookInput; output: PlanningLookOutput };
  /** A student’s wish written down */
  'planning.set_wish': { input: PlanningSetWishInput; output: PlanningSetWishOutput };
  /** Stops a plan; what was found stays */
  'planning.stop': { input: PlanningStopInput; output: PlanningStopOutput };
  /** A plan’s lines made lessons */
  'planning.take': { input: PlanningTakeInput; output: PlanningTakeOutput };
  /** What speaks against a plan as it was moved */
  'planning.weigh': { input: PlanningWeighInput; output: PlanningWeighOutput };
  /** What the student of a visit wishes for */
  'planning.wish': { input: PlanningWishInput; output: PlanningWishOutput };
  /** Price written down */
  'prices.add': { input: PricesAddInput; output: PricesAddOutput };
  /** Tax taken away */
  'prices.drop_tax': { input: PricesDropTaxInput; output: PricesDropTaxOutput };
  /** Price ended */
  'prices.end': { input: PricesEndInput; output: PricesEndOutput };
  /** The price list */
  'prices.list': { input: PricesListInput; output: PricesListOutput };
  /** Tax set */
  'prices.set_tax': { input: PricesSetTaxInput; output: PricesSetTaxOutput };
  /** What tax counts for which kind of line */
  'prices.taxes': { input: PricesTaxesInput; output: PricesTaxesOutput };
  /** The day sheet */
  'reports.day_sheet': { input: ReportsDaySheetInput; output: ReportsDaySheetOutput };
  /** People, places and goals by name */
  'reports.find': { input: ReportsFindInput; output: ReportsFindOutput };
  /** What changed of a thing, newest first */
  'reports.history': { input: ReportsHistoryInput; output: ReportsHistoryOutput };
  /** The load of a visit: minutes and effort, beside the usual court time */
  'reports.load': { input: ReportsLoadInput; output: ReportsLoadOutput };
  /** What was met, kept, slipped and raised across all students, and what waits */
  'reports.season': { input: ReportsSeasonInput; output: ReportsSeasonOutput };
  /** Settings changed */
  'settings.change': { input: SettingsChangeInput; output: SettingsChangeOutput };
  /** The coach's own settings */
  'settings.show': { input: SettingsShowInput; output: SettingsShowOutput };
  /** Drill added */
  'sports.add_drill': { input: SportsAddDrillInput; output: SportsAddDrillOutput };
  /** Skill added */
  'sports.add_skill': { input: SportsAddSkillInput; output: SportsAddSkillOutput };
  /** The drills of a sport, the coach's own among them */
  'sports.drills': { input: SportsDrillsInput; output: SportsDrillsOutput };
  /** The sport packs */
  'sports.list': { input: SportsListInput; output: SportsListOutput };
  /** One sport’s pack */
  'sports.show': { input: SportsShowInput; output: SportsShowOutput };
  /** The skills of a sport, the coach's own among them */
  'sports.skills': { input: SportsSkillsInput; output: SportsSkillsOutput };
  /** Student added */
  'students.add': { input: StudentsAddInput; output: StudentsAddOutput };
  /** Fact written down */
  'students.add_fact': { input: StudentsAddFactInput; output: StudentsAddFactOutput };
  /** Student put away */
  'students.archive': { input: StudentsArchiveInput; output: StudentsArchiveOutput };
  /** Student brought back */
  'students.bring_back': { input: StudentsBringBackInput; output: StudentsBringBackOutput };
  /** Student changed */
  'students.change': { input: StudentsChangeInput; output: StudentsChangeOutput };
  /** Fact changed */
  'students.change_fact': { input: StudentsChangeFactInput; output: StudentsChangeFactOutput };
  /** A student erased */
  'students.erase': { input: StudentsEraseInput; output: StudentsEraseOutput };
  /** Health answers erased */
  'students.erase_health': { input: StudentsEraseHealthInput; output: StudentsEraseHealthOutput };
  /** What is kept about a student, and what erasing would do */
  'students.erasing': { input: StudentsErasingInput; output: StudentsErasingOutput };
  /** A copy of everything about one student, for them */
  'students.everything': { input: StudentsEverythingInput; output: StudentsEverythingOutput };
  /** Equipment, level and playing history of a student, the newest of each first */
  'students.facts': { input: StudentsFactsInput; output: StudentsFactsOutput };
  /** Students by name, searched as one types */
  'students.list': { input: StudentsListInput; output: StudentsListOutput };
  /** Fact taken away */
  'students.remove_fact': { input: StudentsRemoveFactInput; output: StudentsRemoveFactOutput };
  /** One student */
  'students.show': { input: StudentsShowInput; output: StudentsShowOutput };
  /** Terms set */
  'terms.set': { input: TermsSetInput; output: TermsSetOutput };
  /** What the coach’s terms say */
  'terms.show': { input: TermsShowInput; output: TermsShowOutput };
  /** What one of a year’s figures counts */
  'timetable.counted': { input: TimetableCountedInput; output: TimetableCountedOutput };
  /** A run of days: facilities, people, lessons, ways, and the hours still to sell */
  'timetable.trip': { input: TimetableTripInput; output: TimetableTripOutput };
  /** A week: the coach, and everyone who has a lesson, is in town or was offered days */
  'timetable.week': { input: TimetableWeekInput; output: TimetableWeekOutput };
  /** A year in figures, by person and month */
  'timetable.year': { input: TimetableYearInput; output: TimetableYearOutput };
  /** Courts noted as costs */
  'trips.note_courts': { input: TripsNoteCourtsInput; output: TripsNoteCourtsOutput };
  /** A trip beside those of the year before it */
  'trips.others': { input: TripsOthersInput; output: TripsOthersOutput };
  /** What a trip would come to */
  'trips.outlook': { input: TripsOutlookInput; output: TripsOutlookOutput };
  /** What a trip earned and cost */
  'trips.result': { input: TripsResultInput; output: TripsResultOutput };
  /** Visit called off */
  'visits.call_off': { input: VisitsCallOffInput; output: VisitsCallOffOutput };
  /** Visit changed */
  'visits.change': { input: VisitsChangeInput; output: VisitsChangeOutput };
  /** Visit closed */
  'visits.close': { input: VisitsCloseInput; output: VisitsCloseOutput };
  /** Visit expected */
  'visits.expect': { input: VisitsExpectInput; output: VisitsExpectOutput };
  /** Visits in time */
  'visits.list': { input: VisitsListInput; output: VisitsListOutput };
  /** Visit started: its goals are carried into it */
  'visits.open': { input: VisitsOpenInput; output: VisitsOpenOutput };
  /** Visit planned */
  'visits.plan': { input: VisitsPlanInput; output: VisitsPlanOutput };
  /** Visit opened again */
  'visits.reopen': { input: VisitsReopenInput; output: VisitsReopenOutput };
  /** One visit */
  'visits.show': { input: VisitsShowInput; output: VisitsShowOutput };
}

/** The names of all commands. */
export const commandNames = [
  'accounts.balanced',
  'accounts.changed',
  'accounts.overview',
  'accounts.owed_in_lessons',
  'accounts.propose',
  'accounts.settle',
  'accounts.to_settle',
  'accounts.unsettle',
  'accounts.year',
  'assessments.assess',
  'assessments.change_level',
  'assessments.give_norms',
  'assessments.list',
  'assessments.norms',
  'assessments.take_test',
  'assessments.tests',
  'bank.enter',
  'bank.read',
  'bookings.ask',
  'bookings.confirm',
  'bookings.give_back',
  'bookings.list',
  'bookings.message',
  'bookings.refuse',
  'calendar.account',
  'calendar.calendars',
  'calendar.due',
  'calendar.follows',
  'calendar.leave',
  'calendar.put_back',
  'calendar.read',
  'calendar.remove',
  'calendar.set_account',
  'calendar.take',
  'calendar.written',
  'costs.add_rate',
  'costs.change',
  'costs.list',
  'costs.note',
  'costs.pass_on',
  'costs.published',
  'costs.put_rate_away',
  'costs.rates',
  'costs.split_proposal',
  'costs.take_back',
  'costs.take_published',
  'desk.back_up',
  'desk.calendar_talk',
  'desk.check',
  'desk.choose',
  'desk.close',
  'desk.create',
  'desk.exchange_calendars',
  'desk.find_calendars',
  'desk.forget_mail',
  'desk.keychain',
  'desk.leave_calendars',
  'desk.look',
  'desk.make_calendar',
  'desk.open',
  'desk.open_card',
  'desk.open_home_plan',
  'desk.open_letter',
  'desk.open_money_paper',
  'desk.open_sheet',
  'desk.papers',
  'desk.read_calendar',
  'desk.restore',
  'desk.sample',
  'desk.save_calendar',
  'desk.save_card',
  'desk.save_costs',
  'desk.save_everything',
  'desk.save_home_plan',
  'desk.save_letter',
  'desk.save_message',
  'desk.save_message_part',
  'desk.save_money_paper',
  'desk.save_page',
  'desk.save_sheet',
  'desk.send',
  'desk.send_trial',
  'desk.sending',
  'desk.stop_calendar_talk',
  'desk.stop_sending',
  'desk.write_invitations',
  'erasing.backups',
  'erasing.keep_backups_for',
  'erasing.kept_for_accounts',
  'erasing.let_go',
  'exchange.read_csv',
  'exchange.take_csv',
  'facilities.add',
  'facilities.add_court',
  'facilities.archive',
  'facilities.archive_court',
  'facilities.bring_back',
  'facilities.card',
  'facilities.change',
  'facilities.change_court',
  'facilities.list',
  'facilities.rules',
  'facilities.set_card',
  'facilities.set_rules',
  'facilities.set_teaching',
  'facilities.show',
  'facilities.teaching',
  'facilities.terms',
  'facilities.zones',
  'goals.accept',
  'goals.change_words',
  'goals.chart',
  'goals.cue_landed',
  'goals.decide',
  'goals.end_block',
  'goals.enter_total',
  'goals.give_reasons',
  'goals.jot',
  'goals.jottings',
  'goals.list',
  'goals.look_back',
  'goals.on_court',
  'goals.proposals',
  'goals.raise',
  'goals.rank',
  'goals.reasons',
  'goals.set',
  'goals.show',
  'goals.start_block',
  'goals.take_back',
  'goals.touch',
  'goals.weigh',
  'home.last',
  'home.plan',
  'home.show',
  'home.tell',
  'intake.acknowledge_notice',
  'intake.acknowledgements',
  'intake.add_certificate',
  'intake.add_to_incident',
  'intake.answer_readiness',
  'intake.archive_certificate',
  'intake.archive_notice',
  'intake.certificates',
  'intake.change_certificate',
  'intake.change_incident',
  'intake.change_injury',
  'intake.clearances',
  'intake.consents',
  'intake.draft_notice',
  'intake.erase_incident',
  'intake.eyewear',
  'intake.forms',
  'intake.give_consent',
  'intake.go_on',
  'intake.guest_consents',
  'intake.incident',
  'intake.incidents',
  'intake.injuries',
  'intake.make_page',
  'intake.minor_rules',
  'intake.note_injury',
  'intake.notice',
  'intake.notices',
  'intake.notices_needed',
  'intake.policy',
  'intake.publish_notice',
  'intake.read_answers',
  'intake.readiness',
  'intake.ready',
  'intake.ready_at',
  'intake.ready_person',
  'intake.record_clearance',
  'intake.record_incident',
  'intake.set',
  'intake.set_minor_rules',
  'intake.set_policy',
  'intake.show',
  'intake.sign_form',
  'intake.sign_incident',
  'intake.take_answers',
  'intake.withdraw_clearance',
  'intake.withdraw_consent',
  'invoices.change',
  'invoices.credit',
  'invoices.discard',
  'invoices.draft',
  'invoices.in_parts',
  'invoices.issue',
  'invoices.list',
  'invoices.remind',
  'invoices.seller',
  'invoices.set_seller',
  'invoices.show',
  'invoices.would_remind',
  'journal.newest',
  'journal.undo',
  'keeping.due',
  'keeping.set_spans',
  'keeping.spans',
  'lessons.call_off',
  'lessons.change',
  'lessons.clashes',
  'lessons.cut_short',
  'lessons.enter_card',
  'lessons.give',
  'lessons.keep_template',
  'lessons.list',
  'lessons.miss',
  'lessons.note',
  'lessons.plan',
  'lessons.plan_lines',
  'lessons.propose_plan',
  'lessons.rate_effort',
  'lessons.set_plan_lines',
  'lessons.show',
  'lessons.templates',
  'lessons.use_template',
  'letters.choose_language',
  'letters.compose_anew',
  'letters.draft',
  'letters.edit',
  'letters.issue',
  'letters.list',
  'letters.show',
  'observations.list',
  'observations.make_goal',
  'observations.see',
  'observations.see_again',
  'offers.answer',
  'offers.draft',
  'offers.list',
  'offers.make',
  'offers.set_terms',
  'offers.terms',
  'outtray.account',
  'outtray.again',
  'outtray.attach',
  'outtray.edit',
  'outtray.follow_ups',
  'outtray.issue_invoice',
  'outtray.issue_letter',
  'outtray.leave_follow_up',
  'outtray.list',
  'outtray.look',
  'outtray.of_invoice',
  'outtray.of_student',
  'outtray.put',
  'outtray.release',
  'outtray.rules',
  'outtray.set_account',
  'outtray.set_rules',
  'outtray.set_text',
  'outtray.show',
  'outtray.take_off',
  'outtray.tell',
  'outtray.texts',
  'outtray.withdraw',
  'own_time.add',
  'own_time.change',
  'own_time.list',
  'own_time.remove',
  'own_time.set',
  'own_time.show',
  'packages.extend',
  'packages.give_back',
  'packages.give_bonus',
  'packages.lapse',
  'packages.list',
  'packages.move_lessons',
  'packages.sell',
  'packages.show',
  'packages.would_give_back',
  'payers.add',
  'payers.change',
  'payers.choose',
  'payers.list',
  'payers.of_student',
  'payers.show',
  'payments.account',
  'payments.apply',
  'payments.pay_back',
  'payments.receive',
  'payments.take_back',
  'payments.write_off',
  'planning.begin',
  'planning.clear_wish',
  'planning.look',
  'planning.set_wish',
  'planning.stop',
  'planning.take',
  'planning.weigh',
  'planning.wish',
  'prices.add',
  'prices.drop_tax',
  'prices.end',
  'prices.list',
  'prices.set_tax',
  'prices.taxes',
  'reports.day_sheet',
  'reports.find',
  'reports.history',
  'reports.load',
  'reports.season',
  'settings.change',
  'settings.show',
  'sports.add_drill',
  'sports.add_skill',
  'sports.drills',
  'sports.list',
  'sports.show',
  'sports.skills',
  'students.add',
  'students.add_fact',
  'students.archive',
  'students.bring_back',
  'students.change',
  'students.change_fact',
  'students.erase',
  'students.erase_health',
  'students.erasing',
  'students.everything',
  'students.facts',
  'students.list',
  'students.remove_fact',
  'students.show',
  'terms.set',
  'terms.show',
  'timetable.counted',
  'timetable.trip',
  'timetable.week',
  'timetable.year',
  'trips.note_courts',
  'trips.others',
  'trips.outlook',
  'trips.result',
  'visits.call_off',
  'visits.change',
  'visits.close',
  'visits.expect',
  'visits.list',
  'visits.open',
  'visits.plan',
  'visits.reopen',
  'visits.show',
] as const;
