// Entry of the language server as a process of its own, as the editor starts it.

import { serve } from "./serve.ts";

serve();
