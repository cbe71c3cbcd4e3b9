# Finds the .NET SDK that global.json asks for, or says exactly what is missing. Sourced by ./demo and ./test.
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
for place in "$PWD/.dotnet" "$HOME/.dotnet" /usr/share/dotnet /usr/lib/dotnet; do
  command -v dotnet >/dev/null 2>&1 && break
  [ -x "$place/dotnet" ] && PATH="$place:$PATH"
done
if ! command -v dotnet >/dev/null 2>&1; then
  echo "The .NET SDK 10 is missing. On Debian or Ubuntu: 'apt-get install dotnet-sdk-10.0' from Microsoft's package feed;" >&2
  echo "elsewhere take the SDK 10 installer from the .NET site. Or unpack the SDK into $PWD/.dotnet, and run this again." >&2
  exit 2
fi
if ! dotnet --version >/dev/null 2>&1; then
  echo "A .NET SDK is there, but not version 10 ($(dotnet --list-sdks | tr '\n' ';')). Install the SDK 10 beside it and run this again." >&2
  exit 2
fi
