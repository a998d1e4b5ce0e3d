/** The command line: which words do what. */
import { Argument, Command, CommanderError, Option } from 'commander';
import { version } from '../../package.json';
import { SEVERITIES } from '../checks/finding.js';
import { TALKS } from '../checks/talk.js';
import { forTerminal } from './border.js';
import { changes, CHANGES_FORMATS, type ChangesOptions } from './changes-command.js';
import { check, CHECK_FORMATS, type CheckOptions } from './check-command.js';
import { compare, type CompareOptions } from './compare-command.js';
import { demonstrate } from './demo.js';
import { effects, type EffectsOptions } from './effects-command.js';
import { format, type FormatOptions } from './format-command.js';
import { helpIn } from './help.js';
import { EXIT, type Io, type Surroundings, WrongUse } from './io.js';
import { lineage } from './lineage-command.js';
import { plan, PLAN_FORMATS, type PlanOptions } from './plan-command.js';
import { PAPERS } from '../reports/plan/write/tiles.js';
import { readings } from './readings-command.js';
import { rules } from './rules-command.js';
import { sheet, SHEET_FORMATS, type SheetOptions } from './sheet-command.js';
import { SHEET_KINDS } from '../sheets/sheet.js';
import { type PlaceOptions, show, type ShowOptions } from './show-command.js';
import { inLine } from '../wording/visible.js';
import { ways } from './ways-command.js';
import { words } from './words-command.js';
import { languageOf, sentences, Wording } from '../wording/wording.js';

/** Runs one command and answers with its exit code: 0 fine, 1 findings, 2 wrong use. Never throws. */
export async function run(args: readonly string[], surroundings: Surroundings): Promise<number> {
  let code: number = EXIT.fine;
  const io = bordered(surroundings, await wordingFor(args, surroundings));
  const program = programFor(io, async (work) => {
    code = await work;
  });
  try {
    if (args.length === 0) {
      io.complain(program.helpInformation());
      return EXIT.wrongUse;
    }
    const { text } = io.wording;
    if (io.cwd === '')
      throw new WrongUse(text('The folder you are in is no longer there. Go to another and try again.'));
    // A variable that was not set: an empty path would mean the folder one is in, and `format` would lay out all of it.
    if (args.includes(''))
      throw new WrongUse(text('One of the words of the command is empty. Leave it out, or fill it in.'));
    await program.parseAsync(args, { from: 'user' });
    return arrived(code, surroundings, io);
  } catch (error) {
    if (error instanceof CommanderError) {
      return arrived(error.exitCode === 0 ? EXIT.fine : EXIT.wrongUse, surroundings, io);
    }
    io.complain(`${error instanceof WrongUse ? inLine(error.message) : faultMessage(error, io.wording)}\n`);
    return EXIT.wrongUse;
  }
}

/** A result that did not arrive whole is none, whatever the command made of it. */
function arrived(code: number, { unwritten }: Surroundings, { complain, wording: { say, text } }: Io): number {
  const trouble = unwritten?.();
  if (trouble === undefined) return code;
  complain(`${say`What was asked for could not be written out whole: ${text(trouble)}.`}\n`);
  return EXIT.wrongUse;
}

/** Everything a command says goes out through the border. */
export function bordered(surroundings: Surroundings, wording: Wording): Io {
  const ink = crypto.randomUUID();
  return {
    ...surroundings,
    wording,
    ink,
    print: (text) => surroundings.write(forTerminal(text, ink)),
    complain: (text) => surroundings.complain(forTerminal(text, ink)),
  };
}

function programFor(io: Io, done: (work: Promise<number> | number) => Promise<void>): Command {
  const { text } = io.wording;
  const program = new Command('bookmatch')
    .description(text('Checks, shows and compares build recipes for acoustic guitars.'))
    .version(version, '--version', text('print the version'))
    .addOption(
      new Option('--language <language>', text('speak this language; otherwise that of the terminal')).choices([
        'en',
        'de',
      ]),
    )
    .helpOption('-h, --help', text('print this help'))
    .helpCommand('help [command]', text('print the help of a command'))
    .configureHelp(helpIn(io.wording))
    .exitOverride()
    .configureOutput({
      writeOut: io.print,
      writeErr: io.complain,
      outputError: (said, write) => write(inPlainWords(said, io.wording)),
      getOutHelpWidth: () => io.columns,
      getErrHelpWidth: () => io.columns,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    });

  program
    .command('check')
    .description(text('find what is wrong or worth knowing in recipe files'))
    .argument('[paths...]', text('folders or files; the folder you are in, when none is given'))
    .addOption(
      new Option('--format <format>', text('how to print the findings')).choices(CHECK_FORMATS).default('text'),
    )
    .addOption(
      new Option('--fail-on <severity>', text('end with exit code 1 on findings this grave or graver'))
        .choices(SEVERITIES)
        .default('error'),
    )
    .addOption(
      new Option(
        '--talk <level>',
        text('how much is said: what is wrong, what is worth knowing, or everything'),
      ).choices(TALKS),
    )
    .option('--in <folder>', text('read this folder as the shop, and tell only the findings of the paths'))
    .option('--watch', text('check again whenever a recipe file changes'))
    .action((paths: string[], options: CheckOptions) => done(check(paths, options, io)));

  placed(io, program.command('show'))
    .description(text('show everything about a recipe, build, model, wood set, string set or species'))
    .argument('<name>', text('its name'))
    .argument('[part]', text('only this part of it, in full, such as top or bridge.plate'))
    .option('--all', text('every value and figure, with where it comes from and how it is computed'))
    .action((name: string, part: string | undefined, options: ShowOptions) => done(show(name, part, options, io)));

  placed(io, program.command('compare'))
    .description(text('lay two recipes, builds or models side by side'))
    .argument('<a>', text('name of the one; NAME@REV for what it was at a commit'))
    .argument('<b>', text('name of the other'))
    .option('--all', text('also what is too small to tell, each with its figures'))
    .action((a: string, b: string, options: CompareOptions) => done(compare(a, b, options, io)));

  program
    .command('changes')
    .description(text('tell what edits did to the instruments since a commit, through git'))
    .argument('[range]', text('since when: a commit, or two as REV..REV; the last commit, when none is given'))
    .option('--in <folder>', text('the folder of the shop'), '.')
    .addOption(
      new Option('--format <format>', text('for people, for a pull request, or plain data'))
        .choices(CHANGES_FORMATS)
        .default('text'),
    )
    .action((range: string | undefined, options: ChangesOptions) => done(changes(range, options, io)));

  placed(io, program.command('effects'), ['text', 'json', 'csv'])
    .description(text('tell what each change did, as far as the builds can say'))
    .argument('[name]', text('a build, recipe or model; all of them, when none is given'))
    .option('--model <model>', text('tell what all builds of this model say together, and what to change next'))
    .action((name: string | undefined, options: EffectsOptions) => done(effects(name, options, io)));

  program
    .command('readings')
    .description(text('turn a table of old readings (CSV) into builds, with questions for what is unclear'))
    .argument('<file>', text('the table: a row an occasion, a column a reading with its unit in the head'))
    .option('--in <folder>', text('the folder of the shop'), '.')
    .action((file: string, options: { readonly in: string }) => done(readings(file, options, io)));

  placed(io, program.command('ways'))
    .description(text('find every single change that would get there: what it takes, what else it moves, until when'))
    .argument('<name>', text('a recipe or build'))
    .argument(
      '<wish>',
      text('a computed quantity and what it should be, such as "resonance.top: 170 Hz" or "top.sag: by 2 %"'),
    )
    .action((name: string, wish: string, options: PlaceOptions) => done(ways(name, wish, options, io)));

  program
    .command('sheet')
    .description(text('write a sheet to print: bench, client, care or papers; or all open orders'))
    .argument('[name]', text('a recipe, build or order'))
    .addOption(new Option('--kind <kind>', text('which sheet')).choices([...SHEET_KINDS, 'orders']).default('bench'))
    .option('--in <folder>', text('the folder of the shop'), '.')
    .addOption(
      new Option('--format <format>', text('a page for the browser, or plain data'))
        .choices(SHEET_FORMATS)
        .default('html'),
    )
    .action((name: string | undefined, options: SheetOptions) => done(sheet(name, options, io)));

  program
    .command('plan')
    .description(text('draw the plan, or templates of parts, at full size: for paper, laser and router'))
    .argument('<name>', text('a recipe, build or model'))
    .option('--part <parts>', text('what to draw, with commas between: plan, outline, bracing, bridge …'), 'plan')
    .addOption(
      new Option('--format <format>', text('for the screen, for a machine, or tiled on paper'))
        .choices(PLAN_FORMATS)
        .default('pdf'),
    )
    .addOption(
      new Option('--paper <paper>', text('the paper a PDF is tiled on')).choices(Object.keys(PAPERS)).default('a4'),
    )
    .option('--output <file>', text('the file to write; a PDF is named after the instrument when none is given'))
    .option('--in <folder>', text('the folder of the shop'), '.')
    .action((name: string, options: PlanOptions) => done(plan(name, options, io)));

  placed(io, program.command('lineage'))
    .description(text('show who comes from whom, with the changes counted and the builds'))
    .argument('[name]', text('a recipe or model; all of them, when none is given'))
    .action((name: string | undefined, options: PlaceOptions) => done(lineage(name, options, io)));

  program
    .command('format')
    .description(text('lay out recipe files: indentation, aligned values, usual spelling of units'))
    .argument('[paths...]', text('folders or files; the folder you are in, when none is given'))
    .option('--check', text('change nothing; tell which files would change, and end with exit code 1 if any would'))
    .action((paths: string[], options: FormatOptions) => done(format(paths, options, io)));

  program
    .command('rules')
    .description(text('explain a finding, or list them all'))
    .addArgument(new Argument('[code]', text('the code of a finding, such as too-many-changes')))
    .action((code: string | undefined) => done(rules(code, io)));

  program
    .command('words')
    .description(text('list the words of the language, or tell what one means and what lies inside it'))
    .addArgument(new Argument('[word]', text('a part, property, unit, choice, stage or finding, in any shop’s words')))
    .action((word: string | undefined) => done(words(word, io)));

  // For a first look from the project's own folder; of no use at a bench, so the help leaves it out.
  program.command('demo', { hidden: true }).action(() => done(demonstrate(io)));

  return program;
}

/** What `--language` asks for, or else the language of the terminal. Commands explain themselves in it, so it comes first. */
async function wordingFor(args: readonly string[], { locale, translations }: Surroundings): Promise<Wording> {
  const asked = /(?:^| )--language[= ](\S+)/.exec(args.join(' '))?.[1];
  const language = languageOf(asked ?? locale);
  return new Wording(language === 'en' ? {} : await translations(language), language);
}

function placed({ wording: { text } }: Io, command: Command, formats: readonly string[] = ['text', 'json']): Command {
  return command
    .option('--in <folder>', text('the folder of the shop'), '.')
    .addOption(new Option('--format <format>', text('how to print it')).choices(formats).default('text'));
}

/** `error: missing required argument 'name'` becomes a sentence, and says where to find help. */
function inPlainWords(text: string, wording: Wording): string {
  const said = inLine(
    text
      .replace(/^error: /, '')
      .trim()
      .replace(/\n(?=\(Did you mean )/, ' '),
  );
  return wording.say`${complaint(said, wording) ?? asSentence(said)} See: bookmatch --help` + '\n';
}

function asSentence(said: string): string {
  const plain = said.replaceAll(/'([^'\n]+)'/g, '$1');
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}${/[.?)]$/.test(plain) ? '' : '.'}`;
}

/** The usual complaints of the command line's parser in another language; English ones are said as they come. */
function complaint(said: string, { language, say }: Wording): string | undefined {
  if (language === 'en') return undefined;
  const near = /\(Did you mean (?:one of )?(.+)\?\)/.exec(said)?.[1];
  const hint = near === undefined ? '' : say`Did you mean ${near}?`;
  const [, what = ''] = /'([^'\n]+)'/.exec(said) ?? [];
  const choices = /Allowed choices are (.+)\.$/.exec(said)?.[1];
  if (said.startsWith('unknown command')) return sentences(say`There is no command ${what}.`, hint);
  if (said.startsWith('unknown option')) return sentences(say`There is no option ${what}.`, hint);
  if (said.startsWith('missing required argument')) return say`Missing: ${what}.`;
  if (said.includes('argument missing')) return say`After ${what} something is missing.`;
  if (choices !== undefined) return say`For ${what} choose one of ${choices}.`;
  return said.startsWith('too many arguments') ? say`Too many words after ${what}.` : undefined;
}

export function faultMessage(error: unknown, { say }: Wording): string {
  const detail =
    error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 4).join('\n') : String(error);
  return [
    say`Bookmatch has met a fault of its own and had to stop; your files are as they were.`,
    say`Please report it, with the command you gave and these lines:`,
    detail,
  ].join('\n');
}
