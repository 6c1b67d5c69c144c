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

# The programs of the pages, as web/programs names them.
programs='front lesson joint paper handout api'

# What is built and tested natively: all but the page's own crate, whose views run in a browser alone, and the benches.
native=(--workspace --exclude clampwright-web --exclude speed)

# Checks the content, and with "$@" (programs, site) writes the pages. Built with the features that the native tests
# use, so that nothing is compiled twice.
prepare() {
	cargo build --locked --quiet "${native[@]}" --bin prepare || return 1
	"${CARGO_TARGET_DIR:-$root/target}/debug/prepare" "$@"
}

# Builds the program of each kind of page and puts the site together in dist.
build_page() {
	local built="${CARGO_TARGET_DIR:-$root/target}/programs"
	(
		cd "$root" || exit 1
		# What is wrong with the content is said before anything slow begins.
		prepare || exit 1
		# All programs at once keep every core busy; trunk, which can only take one after the other, finds them there.
		cargo build --locked --release --package clampwright-web --bins --target "$wasm_target" || exit 1
		# shellcheck disable=SC2086  # a list of words
		printf '%s\n' $programs | xargs -P "$(nproc)" -I{} trunk build --dist "$built/{}" "web/programs/{}.html" || exit 1
		prepare "$built" dist || exit 1
		node scripts/compress.mjs dist
	)
}
