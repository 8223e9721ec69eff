// Before `npm pack`: in a fresh clone as well, the package gets an up-to-date build and nothing of an older one.
import { build, install, requireNode } from "./prepare.mjs";

requireNode();
install();
build();
