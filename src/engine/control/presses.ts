import type { ControlEvent, ControlTask } from "./arrangement.ts";
import { runControl } from "./simulate.ts";

/**
 * The button presses of semi-automatic controllers: everybody presses who comes into the dark, which is when automatic
 * controllers would have switched on.
 *
 * @param task - Controllers, what they see @param load - Id of the load
 * @returns Presses at every controller that switches; none where one of them is automatic
 * @source CONTROL-MACHINE
 */
export function pressesInTheDark(task: ControlTask, load: string): readonly ControlEvent[] {
  const switching = task.devices.filter(({ output }) => output.kind !== "slave");
  if (switching.some(({ parameters }) => parameters.mode === "automatic")) return [];
  const devices = task.devices.map((device) => ({
    ...device,
    parameters: { ...device.parameters, mode: "automatic" as const },
  }));
  const { on, length } = runControl({ ...task, devices }).loads[load]!;
  return Array.from(on.subarray(0, length)).flatMap((at) =>
    switching.map(({ id: device }): ControlEvent => ({ kind: "button", at, device })),
  );
}
