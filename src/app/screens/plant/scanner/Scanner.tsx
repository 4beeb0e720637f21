// The scanner's self-test: one code to scan, what arrived, and what to set where it did not arrive as printed.

import { generate } from 'lean-qr';
import { toSvgPath } from 'lean-qr/extras/svg';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { siteRules } from '../../../../../shared/floor/fold-labels.ts';
import { recognise } from '../../../../../shared/floor/recognise.ts';
import { useApp, useFloor } from '../../../app.ts';
import { calibrationOf, fullCalibration, stripedCalibration } from '../../../scan/calibration.ts';
import type { WedgeScan } from '../../../scan/wedge.ts';
import { type WedgeReport, wedgeReport } from '../../../scan/wedge-report.ts';
import { Button } from '../../../ui/Button.tsx';
import { code128Bars } from '../../../ui/code128.ts';
import { Icon } from '../../../ui/Icon.tsx';
import { VerdictShape } from '../../../ui/Shape.tsx';
import { dockWords } from '../../../words/dock.ts';
import { scannerWords } from '../../../words/scanner.ts';
import { formatNumber, say } from '../../../words/words.ts';
import { LabelTest } from './LabelTest.tsx';
import {
  type Fitness,
  fitnessOf,
  isKept,
  readAs,
  type ToldFinding,
  tellFindings,
  visibleStretches,
} from './model.ts';
import './scanner.css';

/** Scans shown at most. */
const MOST_SHOWN = 6;

export function Scanner() {
  const app = useApp();
  const words = say(scannerWords);
  const [scans, setScans] = useState<readonly WedgeScan[]>([]);
  const [report, setReport] = useState<WedgeReport | null>(null);
  useEffect(
    () =>
      app.rawScans.take((scan) => {
        setScans((before) => [scan, ...before].slice(0, MOST_SHOWN));
        if (calibrationOf(scan.text) !== null) setReport(wedgeReport(scan));
      }),
    [],
  );
  return (
    <>
      <div class="stack scanner">
        <section class="card test">
          <CalibrationCode />
          <div class="stack">
            <h2>{words.title}</h2>
            <p class="soft">{words.help}</p>
            {report ? (
              <Outcome report={report} />
            ) : (
              <p class="well next" role="status">
                {words.waiting}
              </p>
            )}
          </div>
          <details class="striped">
            <summary>{words.striped}</summary>
            <CalibrationBars />
            <p class="soft">{words.stripedHelp}</p>
          </details>
        </section>
        <LabelTest scan={scans.find(({ text }) => calibrationOf(text) === null) ?? null} />
        <section class="card stack">
          <h2>{words.arrived}</h2>
          {scans.length === 0 && <p class="soft">{words.none}</p>}
          {scans.map((scan) => (
            <Arrived key={scan.startMs} scan={scan} />
          ))}
        </section>
        <section class="card stack">
          <div class="row">
            <h2 class="grow">{words.settingsTitle}</h2>
            <Button onPress={() => window.print()}>
              <Icon name="print" size={22} /> {words.print}
            </Button>
          </div>
          <Settings />
          <KeptPace />
        </section>
      </div>
      <PrintedSheet />
    </>
  );
}

/** The code as it is printed: black on white whatever the theme, with the margin that readers need. */
function CalibrationCode() {
  const words = say(scannerWords);
  const { size, path } = useMemo(() => {
    const code = generate(fullCalibration.text);
    return { size: code.size, path: toSvgPath(code) };
  }, []);
  return (
    <svg
      class="calibration"
      viewBox={`-4 -4 ${size + 8} ${size + 8}`}
      role="img"
      aria-label={words.codeLabel}
      data-testid="calibration-code"
    >
      <rect x="-4" y="-4" width={size + 8} height={size + 8} fill="#fff" />
      <path d={path} fill="#000" shape-rendering="crispEdges" />
    </svg>
  );
}

/** The same for readers that see bar codes only; two pixels a module, so that no edge falls between a screen's dots. */
function CalibrationBars({ isPrinted = false }: { readonly isPrinted?: boolean }) {
  const words = say(scannerWords);
  const { bars, width } = useMemo(() => code128Bars(stripedCalibration.text), []);
  return (
    <svg
      class="calibration-bars"
      {...(isPrinted ? {} : { style: { width: `${2 * width}px` } })}
      viewBox={`0 0 ${width} 60`}
      preserveAspectRatio="none"
      role="img"
      aria-label={words.stripedLabel}
      data-testid="calibration-bars"
    >
      <rect width={width} height="60" fill="#fff" />
      {bars.map((bar) => (
        <rect key={bar.from} x={bar.from} y="4" width={bar.width} height="52" shape-rendering="crispEdges" />
      ))}
    </svg>
  );
}

const outcomes = {
  right: { tone: 'go', verdict: 'accepted', title: 'right', text: 'rightText' },
  'plain-only': { tone: 'care', verdict: 'held', title: 'plainOnly', text: 'plainOnlyText' },
  wrong: { tone: 'stop', verdict: 'refused', title: 'wrong', text: 'wrongText' },
} as const satisfies Readonly<Record<Fitness, object>>;

function Outcome({ report }: { readonly report: WedgeReport }) {
  const app = useApp();
  const words = say(scannerWords);
  const fitness = fitnessOf(report);
  const { tone, verdict, title, text } = outcomes[fitness];
  const told = tellFindings(report);
  useEffect(() => {
    const { preferences } = app;
    if (fitness !== 'wrong') preferences.value = { ...preferences.peek(), scannerTested: true };
  }, [fitness]);
  const canKeep = fitness !== 'wrong' && !isKept(app.preferences.value.scanner, report.settings);
  return (
    <div class={`scan-outcome ${tone}`} role="status" data-testid="scanner-outcome" data-fitness={fitness}>
      <VerdictShape verdict={verdict} size={72} />
      <div class="stack">
        <div>
          <b>{words[title]}</b>
          <br />
          {words[text]}
        </div>
        {told.length > 0 && (
          <ul>
            {told.map((finding, index) => (
              <li key={`${finding.code}${index}`}>
                <Finding finding={finding} />
              </li>
            ))}
          </ul>
        )}
        {canKeep && (
          <div>
            <Button
              testId="scanner-keep"
              onPress={() => {
                app.preferences.value = { ...app.preferences.value, scanner: report.settings };
                app.notice.value = { tone: 'go', text: words.keptNow };
              }}
            >
              {words.keep}
            </Button>
          </div>
        )}
      </div>
    </div>
  );
}

function Finding({ finding }: { readonly finding: ToldFinding }) {
  const words = say(scannerWords);
  const { findings, layouts } = words;
  switch (finding.code) {
    case 'half-arrived':
      return <>{findings[finding.code](finding.characters, finding.wanted)}</>;
    case 'layout-differs':
      return <>{findings[finding.code](layouts[finding.scanner], layouts[finding.tablet])}</>;
    case 'separators-lost':
      return <>{findings[finding.code](finding.names.join(', '))}</>;
    case 'separator-replaced':
      return <>{findings[finding.code](finding.separator, finding.by)}</>;
    case 'unknown-key':
      return <>{findings[finding.code](finding.key)}</>;
    case 'slow':
      return <>{findings[finding.code](Math.round(finding.paceMs))}</>;
    case 'symbology-id-sent':
      return <>{findings[finding.code](finding.symbologyId)}</>;
    case 'characters-differ':
      return (
        <>
          {findings[finding.code]}
          <span class="compared code" translate={false}>
            <small>{words.wanted}</small> <span>{finding.wanted}</span>
            <small>{words.found}</small> <span>{finding.found}</span>
          </span>
        </>
      );
    default:
      return <>{findings[finding.code]}</>;
  }
}

function Arrived({ scan }: { readonly scan: WedgeScan }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(scannerWords);
  const things = say(dockWords).is;
  const known = recognise(floor, app.line.value, scan.text).map(({ is }) => things[is]);
  const read = calibrationOf(scan.text) !== null ? null : readAs(scan, siteRules(floor));
  return (
    <div class="arrived" data-testid="arrived">
      <p class="code" translate={false}>
        {visibleStretches(scan.text).map((stretch, index) =>
          stretch.isControl ? (
            <i key={`${index}${stretch.text}`}>{stretch.text}</i>
          ) : (
            <span key={`${index}${stretch.text}`}>{stretch.text}</span>
          ),
        )}
      </p>
      <p class="soft">
        {words.characters([...scan.text].length)}
        {scan.paceMs !== null &&
          ` · ${words.pace(formatNumber(Number(scan.paceMs.toFixed(scan.paceMs < 10 ? 1 : 0))))}`}
        {` · ${words.endedBy[scan.endedBy]}`}
      </p>
      {read && (
        <p>
          <span class="soft">{words.reads} </span>
          {known.length > 0 && <b>{known.join(', ')} </b>}
          {read.length === 0
            ? known.length === 0 && words.readsNothing
            : read.map(({ field, value }) => (
                <span key={field} class="read">
                  <span class="soft">{words.fields[field]}</span> <b translate={false}>{value}</b>
                </span>
              ))}
        </p>
      )}
    </div>
  );
}

function Settings() {
  const words = say(scannerWords);
  return (
    <ol class="settings">
      {words.settings.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ol>
  );
}

function KeptPace() {
  const app = useApp();
  const words = say(scannerWords);
  if (app.preferences.value.scanner === null) return null;
  return (
    <div class="row">
      <span class="chip go">✓ {words.isKept}</span>
      <Button
        tone="quiet"
        onPress={() => {
          app.preferences.value = { ...app.preferences.value, scanner: null };
        }}
      >
        {words.forget}
      </Button>
    </div>
  );
}

/** What comes out of the printer: the code large enough for any reader, and how to set the scanner beside it. */
function PrintedSheet() {
  const words = say(scannerWords);
  return (
    <div class="printed" aria-hidden="true">
      <h1>{words.sheetTitle}</h1>
      <p>{words.sheetText}</p>
      <CalibrationCode />
      <Holds text={fullCalibration.text} />
      <p>{words.stripedSheet}</p>
      <CalibrationBars isPrinted />
      <Holds text={stripedCalibration.text} />
      <h2>{words.settingsTitle}</h2>
      <Settings />
    </div>
  );
}

function Holds({ text }: { readonly text: string }) {
  return (
    <p class="code" translate={false}>
      <small>{say(scannerWords).sheetHolds} </small>
      {visibleStretches(text).map((stretch, index) =>
        stretch.isControl ? <i key={`${index}`}>{stretch.text}</i> : stretch.text,
      )}
    </p>
  );
}
