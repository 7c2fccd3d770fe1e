// A talk with the server of the coach's calendars: begun, looked at until it has come to its end, stopped.
import { call, type Input, type Output } from '../../ipc';

type CalendarTalk = Output<'desk.calendar_talk'>;

/** So often it is looked at, in milliseconds. */
const AGAIN = 250;
/** So often calendars are brought in step by themselves, in milliseconds. */
const BY_ITSELF = 15 * 60 * 1000;

type Begins = 'desk.find_calendars' | 'desk.make_calendar' | 'desk.exchange_calendars';

/** A talk with the server. */
export class Talking {
  /** How it stands; null before the first. */
  now: CalendarTalk | null = $state.raw(null);
  /** True from the moment it is asked for until it is done. */
  busy = $state(false);
  /** Whether the last exchange that ended needs the password: what is being typed stays while another goes on. */
  password = $state(false);

  /** Begins a talk and waits for its end. Throws what the calls throw. */
  async begin<N extends Begins>(name: N, input: Input<N>): Promise<CalendarTalk> {
    this.busy = true;
    try {
      let now = (await call(name, input)).value as CalendarTalk;
      this.now = now;
      while (now.stage === 'talking') {
        await new Promise((then) => setTimeout(then, AGAIN));
        now = (await call('desk.calendar_talk', {})).value;
        this.now = now;
      }
      if (name === 'desk.exchange_calendars') this.password = now.password;
      return now;
    } finally {
      this.busy = false;
    }
  }

  /** Stops it after the step it is at; what was done until then stays. */
  async stop(): Promise<void> {
    await call('desk.stop_calendar_talk', {});
  }
}

/** The talk of this window, so that one begun by itself is seen on the screen of calendars too. */
export const talking = new Talking();

/** Brings calendars in step, where a server was chosen and its password is known; troubles are told on their screen. */
export async function inStepQuietly(): Promise<void> {
  try {
    const account = (await call('calendar.account', {})).value;
    if (account.address !== '' && !talking.busy) await talking.begin('desk.exchange_calendars', {});
  } catch {
    // No file is open, or the talk broke off: the next one tells.
  }
}

/** In step at once, and every quarter of an hour; returns how to stop. */
export function inStepByItself(): () => void {
  void inStepQuietly();
  const timer = setInterval(() => void inStepQuietly(), BY_ITSELF);
  return () => clearInterval(timer);
}
