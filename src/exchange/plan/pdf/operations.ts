import type { PDFPageProxy } from "pdfjs-dist";
import type { OperationList } from "./page-paths.ts";

/** The inside of a page in the package, as far as it is reached into here. */
interface PageInside {
  _renderPageChunk(chunk: { readonly lastChunk: boolean }, state: IntentState): void;
  _pumpOperatorList(task: { readonly cacheKey: string }): void;
  readonly _intentStates: ReadonlyMap<string, IntentState>;
}

interface IntentState {
  readonly renderTasks: Set<unknown>;
  readonly operatorList: OperationList;
  readonly opListReadCapability: { resolve(list: OperationList): void };
}

/**
 * The operations of a page, annotations left out.
 *
 * When the interpreter stops in the middle, the package hands out what there is as though it were all, and drops the
 * reason. So the task that does this is taken out, and the list is handed out when its last piece has come; then the
 * package's own rejection gets through. Held by a test that reads a damaged page.
 */
export function operationsOf(page: PDFPageProxy): Promise<OperationList> {
  const inside = page as unknown as PageInside;
  const pump = inside._pumpOperatorList;
  const take = inside._renderPageChunk;
  inside._pumpOperatorList = (task) => {
    inside._intentStates.get(task.cacheKey)!.renderTasks.clear();
    pump.call(inside, task);
  };
  inside._renderPageChunk = (chunk, state) => {
    take.call(inside, chunk, state);
    if (chunk.lastChunk) state.opListReadCapability.resolve(state.operatorList);
  };
  return page.getOperatorList({ annotationMode: 0 }) as Promise<OperationList>;
}
