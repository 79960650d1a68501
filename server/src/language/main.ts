import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { serve } from "./server";

serve(createConnection(ProposedFeatures.all));
