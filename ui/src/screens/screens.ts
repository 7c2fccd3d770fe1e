// The list of screens. A screen is added by one line here; those with a nav entry stand in the head, in this order.
import type { Component } from 'svelte';
import type { Route } from '../kit/route';
import Answers from './Answers.svelte';
import BankStatement from './BankStatement.svelte';
import BeforeCourt from './BeforeCourt.svelte';
import Calendars from './Calendars.svelte';
import Coach from './Coach.svelte';
import Costs from './Costs.svelte';
import Courts from './Courts.svelte';
import DaySheet from './DaySheet.svelte';
import Documents from './Documents.svelte';
import EditStudent from './EditStudent.svelte';
import Goal from './Goal.svelte';
import History from './History.svelte';
import Home from './Home.svelte';
import Import from './Import.svelte';
import Incident from './Incident.svelte';
import Incidents from './Incidents.svelte';
import Invoice from './Invoice.svelte';
import Issued from './Issued.svelte';
import KeepOrErase from './KeepOrErase.svelte';
import Keeping from './Keeping.svelte';
import LessonPlan from './LessonPlan.svelte';
import Letter from './Letter.svelte';
import Letters from './Letters.svelte';
import Levels from './Levels.svelte';
import MailAccount from './MailAccount.svelte';
import MailTexts from './MailTexts.svelte';
import Message from './Message.svelte';
import Money from './Money.svelte';
import MoneyTerms from './MoneyTerms.svelte';
import MoneyYear from './MoneyYear.svelte';
import NewIncident from './NewIncident.svelte';
import NewPlace from './NewPlace.svelte';
import NewStudent from './NewStudent.svelte';
import Notices from './Notices.svelte';
import OnCourt from './OnCourt.svelte';
import OutTray from './OutTray.svelte';
import OwnTime from './OwnTime.svelte';
import Package from './Package.svelte';
import Papers from './Papers.svelte';
import Payer from './Payer.svelte';
import Payers from './Payers.svelte';
import People from './People.svelte';
import Place from './Place.svelte';
import Plan from './Plan.svelte';
import PlaceRules from './PlaceRules.svelte';
import Places from './Places.svelte';
import Prices from './Prices.svelte';
import Rates from './Rates.svelte';
import ReadNotice from './ReadNotice.svelte';
import ReadThrough from './ReadThrough.svelte';
import Season from './Season.svelte';
import Sent from './Sent.svelte';
import Settle from './Settle.svelte';
import Student from './Student.svelte';
import Trip from './Trip.svelte';
import TypeCard from './TypeCard.svelte';
import Visit from './Visit.svelte';
import Week from './Week.svelte';
import WriteNotice from './WriteNotice.svelte';
import Year from './Year.svelte';
import YearCounted from './YearCounted.svelte';

/** What a screen is given: the parts of the address that its path names. Most need none. */
export interface ScreenProps {
  params: Record<string, string>;
}

/** A screen: its address and what draws it. */
export interface Screen extends Route {
  /** The words of its entry in the head, for the screens that have one. */
  nav?: string;
  /** Fills the window, without the head. */
  bare?: true;
  component: Component<ScreenProps> | Component<Record<string, never>>;
}

/** All screens, more exact addresses before those with a named part. */
export const screens: readonly Screen[] = [
  { path: '/', nav: 'Day sheet', component: DaySheet },
  { path: '/people', nav: 'People', component: People },
  { path: '/people/new', component: NewStudent },
  { path: '/people/:student', component: Student },
  { path: '/people/:student/levels', component: Levels },
  { path: '/people/:student/edit', component: EditStudent },
  { path: '/people/:student/intake', component: BeforeCourt },
  { path: '/people/:student/intake/:lesson', component: BeforeCourt },
  { path: '/people/:student/answers', component: Answers },
  { path: '/people/:student/read/:notice', component: ReadNotice },
  { path: '/incidents', component: Incidents },
  { path: '/incidents/new', component: NewIncident },
  { path: '/incidents/new/:student', component: NewIncident },
  { path: '/incidents/new/:student/:lesson', component: NewIncident },
  { path: '/incidents/:incident', component: Incident },
  { path: '/people/:student/sent', component: Sent },
  { path: '/people/:student/record', component: KeepOrErase },
  { path: '/season', nav: 'Season', component: Season },
  { path: '/goals/:goal', component: Goal },
  { path: '/visits/:visit', component: Visit },
  { path: '/lessons/:lesson', component: LessonPlan },
  { path: '/lessons/:lesson/card', component: TypeCard },
  { path: '/history/:thing/:id', component: History },
  { path: '/visits/:visit/home', component: Home },
  { path: '/court/:visit', bare: true, component: OnCourt },
  { path: '/court/:visit/:lesson', bare: true, component: OnCourt },
  { path: '/plan/:first/:last', component: Plan },
  { path: '/places', nav: 'Places', component: Places },
  { path: '/places/new', component: NewPlace },
  { path: '/places/:facility', component: Place },
  { path: '/places/:facility/rules', component: PlaceRules },
  { path: '/courts', nav: 'Courts', component: Courts },
  { path: '/letters', nav: 'Letters', component: Letters },
  { path: '/letters/:visit', component: Letter },
  { path: '/issued/:letter', component: Issued },
  { path: '/import', component: Import },
  { path: '/coach', nav: 'Coach', component: Coach },
  { path: '/coach/time', component: OwnTime },
  { path: '/coach/calendars', component: Calendars },
  { path: '/coach/rates', component: Rates },
  { path: '/coach/mail', component: MailAccount },
  { path: '/coach/mail/texts', component: MailTexts },
  { path: '/coach/keeping', component: Keeping },
  { path: '/costs', component: Costs },
  { path: '/costs/:year', component: Costs },
  { path: '/coach/notices', component: Notices },
  { path: '/coach/notices/new', component: WriteNotice },
  { path: '/coach/notices/:notice', component: WriteNotice },
  { path: '/coach/papers', component: Papers },
  { path: '/week', nav: 'Week', component: Week },
  { path: '/week/:day', component: Week },
  { path: '/money', nav: 'Money', component: Money },
  { path: '/out', nav: 'Out-tray', component: OutTray },
  { path: '/out/read', component: ReadThrough },
  { path: '/out/:message', component: Message },
  { path: '/money/settle', component: Settle },
  { path: '/money/bank', component: BankStatement },
  { path: '/money/documents', component: Documents },
  { path: '/money/invoices/:invoice', component: Invoice },
  { path: '/money/payers', component: Payers },
  { path: '/money/payers/:payer', component: Payer },
  { path: '/money/packages/:package', component: Package },
  { path: '/money/prices', component: Prices },
  { path: '/money/terms', component: MoneyTerms },
  { path: '/money/year', component: MoneyYear },
  { path: '/money/year/:year', component: MoneyYear },
  { path: '/trip/:first/:last', component: Trip },
  { path: '/year', component: Year },
  { path: '/year/:year', component: Year },
  { path: '/year/:year/:month/:student/:what', component: YearCounted },
];
