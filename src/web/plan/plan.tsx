import { memo, useEffect, useRef } from "react";
import type { Calculator } from "../calculate/calculator.ts";
import { preferences, usePreferences } from "../settings/preferences.ts";
import { type Actions, storeyBounds } from "../shell/actions.ts";
import { findingsHere, type Store, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/index.ts";
import { drawKey, sideKey } from "./draw-keys.ts";
import { loadDrawing } from "./draw-loading.ts";
import { clipboardOn } from "./edit/clipboard.ts";
import { doKey } from "./key-deeds.ts";
import { keyDeed } from "./keys.ts";
import { type Palette, readPalette } from "./paint/palette.ts";
import { painterOn } from "./painter.ts";
import { picturesIn } from "./pictures.ts";
import { pinsIn } from "./pins.ts";
import { listenOn } from "./pointers.ts";
import { benchOf, chosenSideOf, cursorAt, flagsOf, focusOf, heldOf, triedOf } from "./reading.ts";
import { shownByStage } from "./shown-by-stage.ts";
import { type Input, rest } from "./tools/state.ts";
import { gripsOf, previewOf } from "./tools/step.ts";
import { fitted, type Insets } from "./view.ts";
import { walkMarksOf } from "./walks.ts";
import { wiresOf } from "./wires.ts";
import "./plan.css";

interface PlanProps {
  readonly store: Store<Workbench>;
  readonly calculator: Calculator;
  readonly actions: Actions;
  readonly insets: () => Insets;
  readonly input: (input: Input) => void;
  /** Moves the keyboard into the card. */
  readonly onCard: () => void;
}

/** The drawing on the screen. It paints itself outside React: a frame costs only what has changed. */
export const Plan = memo(function Plan({ store, calculator, actions, insets, input, onCard }: PlanProps) {
  const host = useRef<HTMLDivElement>(null);
  const { theme, contrast, units } = usePreferences();
  const picture = useRef<{ palette: Palette; repaint: () => void } | undefined>(undefined);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const painter = painterOn(
      {
        below: element.querySelector(".plan-below") as HTMLElement,
        above: element.querySelector(".plan-above") as HTMLElement,
      },
      {
        underlayTrouble: () => store.set({ notice: t("plan.underlay-failed") }),
        trouble: () => store.set({ notice: t("plan.painter-failed") }),
      },
    );
    let space = false;
    let loading = false;
    let known = insets();
    /** The same object while the bars and cards are where they were. */
    const sameInsets = (now: Insets): Insets => {
      const same = (Object.keys(now) as (keyof Insets)[]).every((side) => now[side] === known[side]);
      if (!same) known = now;
      return known;
    };
    const shownIn = shownByStage();
    const own = {
      palette: readPalette(),
      repaint: () => {
        const bench = store.get();
        const calculated = calculator.current();
        const preview = previewOf(bench.toolState, bench.job.site);
        const held = heldOf(bench, preview);
        painter.show({
          site: bench.job.site,
          storey: bench.storey,
          underlays: bench.job.underlays,
          view: bench.view,
          units: preferences().units,
          palette: own.palette,
          // In the wiring the zones are out of the way.
          shown: shownIn(bench),
          wires: wiresOf(bench),
          walk: walkMarksOf(bench),
          calculated,
          selection: bench.selection,
          toolState: bench.toolState,
          preview,
          held,
          grips: gripsOf(benchOf(bench)),
          side: chosenSideOf(bench),
          planned: bench.planned,
          tried: triedOf(bench),
          lit: bench.lit,
          flags: flagsOf(bench, findingsHere(bench, calculated)),
          focus: focusOf(bench),
          // Bars and cards stay where they are while one drags: to ask for their sizes makes the browser lay out the page.
          insets: held ? known : sameInsets(insets()),
        });
      },
    };
    picture.current = own;
    const stopListening = listenOn(element, {
      view: () => store.get().view,
      setView: (view) => store.set({ view }),
      input: (what) => {
        if (what.do === "down") element.focus({ preventScroll: true });
        input(what);
      },
      rested: () => {
        const { toolState } = store.get();
        if (toolState.on === "press") store.set({ toolState: { ...toolState, add: "add", grip: undefined } });
      },
      panning: () => space,
      hover: (pixel, free) => {
        element.style.cursor = cursorAt(store.get(), pixel, space);
        if (pixel && store.get().toolState.on !== "rest") input({ do: "hover", pixel, free });
      },
    });
    const stopClipboard = clipboardOn(element, { view: () => store.get().view, actions });
    const sized = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      const { view, job, storey } = store.get();
      const next = { ...view, width, height };
      store.set({ view: view.width === 0 ? fitted(next, storeyBounds(job, storey), insets()) : next });
    });
    sized.observe(element);
    const keyDown = (event: KeyboardEvent): void => {
      if (event.key === " ") {
        space = true;
        event.preventDefault();
        return;
      }
      // Figures that are typed while one draws go to the field for them.
      if (store.get().tool.kind === "add" && drawKey(event)) return;
      if (chosenSideOf(store.get()) && sideKey(event)) return;
      const deed = keyDeed(event);
      if (!deed) return;
      event.preventDefault();
      doKey(deed, {
        store,
        actions,
        findings: () => findingsHere(store.get(), calculator.current()),
        input,
        onCard,
      });
    };
    const keyUp = (event: KeyboardEvent): void => {
      if (event.key === " ") space = false;
    };
    element.addEventListener("keydown", keyDown);
    element.addEventListener("keyup", keyUp);
    // Drawing is loaded with the first tool that is taken for it.
    const fetchDrawing = (): void => {
      const { tool, drawing } = store.get();
      if (tool.kind !== "add" || drawing || loading) return;
      loading = true;
      void loadDrawing(store)
        .catch(() => {})
        .finally(() => {
          loading = false;
        });
    };
    fetchDrawing();
    const stopDrawing = store.subscribe(fetchDrawing);
    const pinNotes = pinsIn(element.querySelector(".plan-pins") as HTMLElement, (note) => {
      store.set({ panel: { kind: "notes" } });
      requestAnimationFrame(() =>
        document.getElementById(`note-${note}`)?.scrollIntoView({ block: "nearest" }),
      );
    });
    const layPictures = picturesIn(element.querySelector(".plan-pictures") as HTMLElement);
    const laid = (): void => {
      layPictures(store.get());
      pinNotes(store.get());
    };
    laid();
    const stopPictures = store.subscribe(laid);
    const stopStore = store.subscribe(own.repaint);
    const stopCalculator = calculator.subscribe(own.repaint);
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const repalette = (): void => {
      own.palette = readPalette();
      own.repaint();
    };
    dark.addEventListener("change", repalette);
    own.repaint();
    return () => {
      stopListening();
      stopClipboard();
      sized.disconnect();
      stopDrawing();
      stopPictures();
      stopStore();
      stopCalculator();
      dark.removeEventListener("change", repalette);
      element.removeEventListener("keydown", keyDown);
      element.removeEventListener("keyup", keyUp);
      painter.stop();
      store.set({ toolState: rest });
    };
  }, [store, calculator, actions, insets, input, onCard]);

  // Colours and figures follow the preferences.
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again by what is painted
  useEffect(() => {
    const own = picture.current;
    if (!own) return;
    own.palette = readPalette();
    own.repaint();
  }, [theme, contrast, units]);

  return (
    <div
      ref={host}
      className="plan"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move what is selected
      tabIndex={0}
      aria-label={t("plan.label")}
      aria-describedby="plan-keys"
    >
      <div className="plan-below" />
      <div className="plan-pictures" aria-hidden="true" />
      <div className="plan-above" />
      <div className="plan-pins" />
      <p id="plan-keys" className="unseen">
        {t("plan.keys")}
      </p>
    </div>
  );
});
