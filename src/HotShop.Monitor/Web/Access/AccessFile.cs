using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace HotShop.Monitor.Web.Access;

/// <summary>A screen that was paired with a code of the owner's.</summary>
public sealed record PairedScreen(string Id, string Name, DateTimeOffset PairedAt);

/// <param name="OwnerStamp">Changes with the password: cookies of the old one end.</param>
sealed record AccessState(string? OwnerPasswordHash, string? OwnerStamp, IReadOnlyList<PairedScreen> Screens);

/// <summary>
/// The owner's password, hashed, and the paired screens: <c>access.json</c> in the data folder, apart from the store, so that signing in works while the store does not.
/// A forgotten password: stop the service, delete the file, start; the set-up code is printed again.
/// </summary>
sealed class AccessFile
{
    public const int ShortestPassword = 10;

    // PBKDF2-HMAC-SHA512; 210,000 rounds after the OWASP password storage cheat sheet (from memory).
    static readonly PasswordHasher<object> hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = 210_000 }));
    static readonly object anyone = new();
    readonly string path;
    readonly Lock gate = new();
    AccessState state;

    /// <exception cref="InvalidDataException">The file is there but cannot be read.</exception>
    public AccessFile(string dataDirectory)
    {
        Directory.CreateDirectory(dataDirectory);
        path = Path.Combine(dataDirectory, "access.json");
        state = Read(path);
    }

    public bool HasOwner => state.OwnerPasswordHash is not null;

    public string? OwnerStamp => state.OwnerStamp;

    public IReadOnlyList<PairedScreen> Screens => state.Screens;

    public bool IsPaired(string id) => state.Screens.Any(s => s.Id == id);

    public bool IsOwner(string password) =>
        state.OwnerPasswordHash is { } hash && hasher.VerifyHashedPassword(anyone, hash, password) != PasswordVerificationResult.Failed;

    public void SetOwner(string password)
    {
        var hash = hasher.HashPassword(anyone, password);
        Change(s => s with { OwnerPasswordHash = hash, OwnerStamp = Guid.NewGuid().ToString("n") });
    }

    public PairedScreen Pair(string name, DateTimeOffset now)
    {
        var screen = new PairedScreen(Guid.NewGuid().ToString("n"), name, now);
        Change(s => s with { Screens = [.. s.Screens, screen] });
        return screen;
    }

    /// <returns>False where there is no such screen.</returns>
    public bool Unpair(string id)
    {
        var was = IsPaired(id);
        Change(s => s with { Screens = [.. s.Screens.Where(p => p.Id != id)] });
        return was;
    }

    void Change(Func<AccessState, AccessState> change)
    {
        lock (gate)
        {
            var after = change(state);
            // Aside and moved: a power cut leaves the old file or the new one.
            var how = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows()) how.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using (var file = new FileStream($"{path}.new", how))
            {
                JsonSerializer.Serialize(file, after, JsonSerializerOptions.Web);
                file.Flush(flushToDisk: true);
            }
            File.Move($"{path}.new", path, overwrite: true);
            state = after;
        }
    }

    static AccessState Read(string path)
    {
        if (!File.Exists(path)) return new(null, null, []);
        try
        {
            return JsonSerializer.Deserialize<AccessState>(File.ReadAllText(path), JsonSerializerOptions.Web) ?? throw new JsonException("it holds null");
        }
        catch (JsonException broken)
        {
            // Starting open, or with a set-up code, would hand the studio to whoever damages the file.
            throw new InvalidDataException($"{path} cannot be read ({broken.Message}): put back a copy, or delete it to set a new password and pair the screens again", broken);
        }
    }
}
