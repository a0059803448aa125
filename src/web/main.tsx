// Where the pages begin: lighting first, then the outbox, then what is seen.
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import { startOutbox } from "./outbox/outbox.ts";
import { readTheme, showTheme } from "./shell/theme.ts";
import "@fontsource/atkinson-hyperlegible/400.css";
import "@fontsource/atkinson-hyperlegible/700.css";
import "./tokens.css";
import "./styles/base.css";
import "./styles/controls.css";
import "./styles/shell.css";
import "./styles/card.css";
import "./styles/ruler.css";
import "./styles/today.css";
import "./styles/sitting.css";

showTheme(readTheme());
startOutbox();

const root = document.getElementById("root");
if (root) createRoot(root).render(<App />);
