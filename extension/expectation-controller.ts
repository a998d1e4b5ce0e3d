import {
  type CancellationToken,
  type TestController,
  type TestItem,
  type TestRun,
  type TestRunRequest,
  Disposable,
  Location,
  TestMessage,
  TestRunProfileKind,
  TestRunRequest as RunRequest,
  l10n,
  tests,
} from 'vscode';
import { type ExpectationTest, ListExpectations, type RecipeTests } from '../language/server/protocol.js';
import type { Instruments } from './folder-instruments.js';
import type { LanguageClient } from './language-client.js';
import { Answered } from './trees/answered.js';

/** What recipes expect of themselves, in the Testing view. Once run, they are told anew whenever an edit changes one. */
export function registerExpectationTests(client: LanguageClient, instruments: Instruments): Disposable {
  const controller = tests.createTestController('bookmatch', 'Bookmatch');
  const answer = new Answered<readonly RecipeTests[]>(client, [], () => client.sendRequest(ListExpectations));
  const list = new TestList(controller, client);
  const told = new Map<TestItem, string>();

  const tell = (run: TestRun, item: TestItem) => {
    const test = list.testOf(item);
    if (!test || test.outcome === 'working') return false;
    report(run, item, test);
    told.set(item, JSON.stringify([test.outcome, test.message]));
    return true;
  };

  const run = async (request: TestRunRequest, token: CancellationToken) => {
    await answer.look();
    const testRun = controller.createTestRun(request);
    let waiting = list.leaves(request.include).filter((item) => !request.exclude?.includes(item));
    for (const item of waiting) testRun.started(item);
    for (const end = Date.now() + PATIENCE; ;) {
      waiting = waiting.filter((item) => !tell(testRun, item));
      const left = end - Date.now();
      if (waiting.length === 0 || left <= 0 || token.isCancellationRequested) break;
      await nextAnswer(answer, left, token);
    }
    for (const item of waiting) testRun.skipped(item);
    testRun.end();
  };

  const refresh = () => {
    list.show(answer.value);
    const present = new Set(list.leaves());
    for (const item of told.keys()) if (!present.has(item)) told.delete(item);
    const changed = [...told].filter(([item, before]) => {
      const test = list.testOf(item);
      return test && test.outcome !== 'working' && JSON.stringify([test.outcome, test.message]) !== before;
    });
    if (changed.length === 0) return;
    const items = changed.map(([item]) => item);
    const testRun = controller.createTestRun(new RunRequest(items), l10n.t('After an edit'), false);
    for (const item of items) tell(testRun, item);
    testRun.end();
  };

  controller.refreshHandler = () => answer.look();
  controller.createRunProfile(l10n.t('Check'), TestRunProfileKind.Run, run, true);
  return Disposable.from(
    controller,
    answer,
    instruments.onDidChange(() => void answer.look()),
    answer.onDidChange(refresh),
  );
}

/** ms that a resonance may take to be worked out. */
const PATIENCE = 60_000;

/** The tests as the view has them, kept the same objects as long as they are the same tests. */
class TestList {
  private readonly testsOf = new Map<TestItem, ExpectationTest>();

  constructor(
    private readonly controller: TestController,
    private readonly client: LanguageClient,
  ) {}

  testOf(item: TestItem): ExpectationTest | undefined {
    return this.testsOf.get(item);
  }

  show(recipes: readonly RecipeTests[]): void {
    this.testsOf.clear();
    this.controller.items.replace(
      recipes.map(({ recipe, uri, range, tests }) => {
        const item = this.item(this.controller.items.get(recipe), recipe, recipe, uri);
        item.range = this.client.protocol2CodeConverter.asRange(range);
        item.children.replace(tests.map((test, i) => this.child(item, uri, test, i)));
        return item;
      }),
    );
  }

  /** The single tests among these, or all of them. */
  leaves(items: readonly TestItem[] = [...this.controller.items].map(([, item]) => item)): TestItem[] {
    return items.flatMap((item) =>
      item.children.size > 0 ? this.leaves([...item.children].map(([, child]) => child)) : [item],
    );
  }

  private child(recipe: TestItem, uri: string, test: ExpectationTest, index: number): TestItem {
    const id = `${recipe.id} ${index} ${test.label}`;
    const item = this.item(recipe.children.get(id), id, test.label, uri);
    item.range = this.client.protocol2CodeConverter.asRange(test.range);
    // A test that is left out cannot carry a message, so what is missing stands behind its name.
    item.description = test.outcome === 'unknown' ? test.message : undefined;
    this.testsOf.set(item, test);
    return item;
  }

  private item(known: TestItem | undefined, id: string, label: string, uri: string): TestItem {
    const place = this.client.protocol2CodeConverter.asUri(uri);
    return known?.uri?.toString() === place.toString() ? known : this.controller.createTestItem(id, label, place);
  }
}

function report(run: TestRun, item: TestItem, { outcome, message }: ExpectationTest): void {
  const { uri, range } = item;
  const location = uri && range ? new Location(uri, range) : undefined;
  const said = new TestMessage(message);
  said.location = location;
  // A test left out carries no message, but what is told with a place stands there.
  run.appendOutput(`${item.label}: ${message}\r\n`, outcome === 'unknown' ? location : undefined, item);
  if (outcome === 'passed') run.passed(item);
  else if (outcome === 'failed') run.failed(item, said);
  else if (outcome === 'faulty') run.errored(item, said);
  else run.skipped(item);
}

function nextAnswer(answer: Answered<unknown>, ms: number, token: CancellationToken): Promise<void> {
  return new Promise((go) => {
    const parts: Disposable[] = [];
    const done = () => {
      Disposable.from(...parts).dispose();
      go();
    };
    const late = setTimeout(done, ms);
    parts.push(new Disposable(() => clearTimeout(late)), answer.onDidChange(done), token.onCancellationRequested(done));
  });
}
