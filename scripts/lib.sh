# shellcheck shell=bash
# Shared by the other scripts: where things are, and how they speak.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
browser_checks="$root/tests/browser"
wasm_target=wasm32-unknown-unknown
# shellcheck disable=SC2034  # read by scripts/setup
trunk_version=0.21.14

# cargo puts its tools here, npm its own in the second; trunk finds wasm-opt through the path.
export PATH="$browser_checks/node_modules/.bin:${CARGO_HOME:-$HOME/.cargo}/bin:$PATH"
export CARGO_TERM_COLOR=${CARGO_TERM_COLOR:-auto}

# A toolchain that scripts/wasm-std-from-source made, if it was needed on this machine.
private_toolchain="$root/.toolchain"
if [[ -x "$private_toolchain/bin/rustc" ]]; then
	export PATH="$private_toolchain/bin:$PATH"
fi

say() {
	printf '%s\n' "$*"
}

die() {
	printf '%s\n' "$*" >&2
	exit 1
}

# Version of a package in Cargo.lock.
locked_version() {
	awk -v name="\"$1\"" '$1 == "name" { found = $3 == name } $1 == "version" && found { gsub(/"/, "", $3); print $3; exit }' "$root/Cargo.lock"
}

# Whether the compiler that cargo will use has a standard library for wasm.
has_wasm_std() {
	compgen -G "$(rustc --print sysroot)/lib/rustlib/$wasm_target/lib/libstd-*.rlib" >/dev/null
}

build_page() {
	# trunk wants to see the page before it runs the hook that writes it.
	(cd "$root" && cargo run --locked --quiet --package prepare && trunk build --release --offline)
}
