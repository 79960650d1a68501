import { spawnSync } from "node:child_process";

/**
 * A network namespace starts with its loopback down. iproute2 may be missing on a small machine; perl-base
 * is on every Debian: 0x8914 is SIOCSIFFLAGS and 0x41 is IFF_UP | IFF_RUNNING (Linux, if.h and sockios.h).
 */
const raiseLoopback =
  `ip link set lo up 2>/dev/null || perl -MSocket -e '` +
  `socket(S, PF_INET, SOCK_DGRAM, 0) or exit 1; $r = pack("a16 s x22", "lo", 0x41); ioctl(S, 0x8914, $r) or exit 1'`;

const listenAndConnect =
  `const net = require("node:net"); const server = net.createServer().listen(0, "127.0.0.1", () => ` +
  `net.connect(server.address().port, "127.0.0.1", () => process.exit(0)).on("error", () => process.exit(1)));`;

/**
 * The words to put before a command so that it runs without any network but loopback: an empty list where
 * the machine does not allow it. What is returned was tried here with a connection over loopback.
 */
export function withoutNetwork() {
  const ways = [["--net"], ["--map-root-user", "--net"]];
  return (
    ways
      .map((flags) => ["unshare", ...flags, "sh", "-c", `{ ${raiseLoopback}; } && exec "$@"`, "sh"])
      .find(([program, ...args]) => {
        const trial = [...args, process.execPath, "-e", listenAndConnect];
        return spawnSync(program, trial, { stdio: "ignore", timeout: 10_000 }).status === 0;
      }) ?? []
  );
}
