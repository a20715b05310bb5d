// What every page loads: the offline copy, and on pages with a form the live engine.

import { keepOffline } from "./offline.js";
import { liveForms } from "./forms.js";

const hasForms = liveForms();
keepOffline(hasForms);
