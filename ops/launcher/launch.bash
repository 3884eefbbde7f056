# Shared by ops/standalone and ops/demo: finds Java, builds what is absent, and becomes the launcher.
root=$(cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." && pwd)
oldest=17

find_java() {
    java="${JAVA_HOME:+$JAVA_HOME/bin/}java"
    command -v "$java" >/dev/null || {
        echo "stook: there is no java${JAVA_HOME:+ in JAVA_HOME ($JAVA_HOME)}; install a JDK $oldest or newer" >&2
        exit 1
    }
    local version
    version=$("$java" -version 2>&1 | sed -n 's/.*version "\(1\.\)\{0,1\}\([0-9]\{1,\}\).*/\2/p' | head -n 1)
    if [ -z "$version" ] || [ "$version" -lt "$oldest" ]; then
        echo "stook: $(command -v "$java") is Java ${version:-of an unknown version}; a JDK $oldest or newer is needed" >&2
        exit 1
    fi
}

build_what_is_absent() {
    local jar
    for jar in ops/launcher/target/stook-launcher.jar service/app/target/stook-app.jar worker/node/target/stook-node.jar; do
        [ -f "$root/$jar" ] && continue
        command -v "${java}c" >/dev/null || {
            echo "stook: $(command -v "$java") has no compiler beside it; a JDK is needed to build, not only a JRE" >&2
            exit 1
        }
        echo "stook: $jar is not built yet; building, which takes a minute or two after the downloads" >&2
        (cd "$root" && ./mvnw -q -B -ntp -DskipTests package) || {
            echo "stook: the build failed, see above" >&2
            exit 1
        }
        return
    done
}

launch() {
    find_java
    build_what_is_absent
    exec "$java" -jar "$root/ops/launcher/target/stook-launcher.jar" "$@"
}
