using System.Text;
using FsCheck.Xunit;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class NightLinkTests
{
    static readonly Instant now = Instant.FromUtc(2026, 3, 1, 2, 14);
    static readonly LinkKey key = new([.. Enumerable.Range(0, 32).Select(i => (byte)i)]), otherKey = new(new byte[32]);
    static readonly NightLinks links = new(key, new Uri("https://quillmere.example/"));
    static readonly LinkClaim claim = new("furnace-1.overheat@1", "ana", "push", IsTest: false, now, now + NightLinks.Longest);

    // RFC 4231 test case 2, its four-byte key. Ours are never so short, so the function that signs is checked and not the key's length.
    [Fact]
    public void The_signature_is_the_published_HMAC_SHA_256() =>
        Assert.Equal("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
            Convert.ToHexStringLower(LinkKey.Sign("Jefe"u8, "what do ya want for nothing?"u8)));

    [Fact]
    public void A_link_says_who_may_answer_for_what() => Assert.Equal(claim, links.Verify(links.Make(claim), now));

    [Fact]
    public void A_link_opens_until_its_last_second_and_not_after()
    {
        var token = links.Make(claim);
        Assert.NotNull(links.Verify(token, claim.ExpiresAt - Duration.FromSeconds(1)));
        Assert.Null(links.Verify(token, claim.ExpiresAt));
    }

    [Fact]
    public void A_link_from_the_future_does_not_open_but_two_minutes_of_clock_are_forgiven()
    {
        var token = links.Make(claim);
        Assert.NotNull(links.Verify(token, now - Duration.FromMinutes(2)));
        Assert.Null(links.Verify(token, now - Duration.FromMinutes(3)));
    }

    [Fact]
    public void A_link_signed_with_another_key_does_not_open() =>
        Assert.Null(links.Verify(new NightLinks(otherKey, new Uri("https://quillmere.example/")).Make(claim), now));

    [Fact]
    public void After_a_change_of_key_links_already_sent_still_open() =>
        Assert.Equal(claim, new NightLinks(otherKey, new Uri("https://quillmere.example/"), previousKey: key).Verify(links.Make(claim), now));

    [Property(MaxTest = 500)]
    public bool A_link_with_one_character_changed_never_opens(ushort place, char replacement)
    {
        var token = links.Make(claim);
        var at = place % token.Length;
        var tampered = $"{token[..at]}{replacement}{token[(at + 1)..]}";
        return tampered == token || links.Verify(tampered, now) is null;
    }

    [Fact]
    public void Every_character_of_a_link_counts()
    {
        var token = links.Make(claim);
        const string alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.";
        for (var at = 0; at < token.Length; at++)
            foreach (var other in alphabet)
                if (token[at] != other) Assert.Null(links.Verify($"{token[..at]}{other}{token[(at + 1)..]}", now));
    }

    [Property(MaxTest = 500)]
    public bool No_text_is_a_link_by_chance(string? text) => links.Verify(text, now) is null;

    [Property(MaxTest = 300)]
    public bool A_payload_of_anything_signed_by_us_is_read_or_refused_and_never_crashes(byte[] junk)
    {
        // Signed with our key, as an older version might have: not the form that is read today.
        var payload = Encoding.UTF8.GetBytes(string.Join('\n', "1", "kid", Convert.ToHexString(junk)));
        var token = $"{System.Buffers.Text.Base64Url.EncodeToString(payload)}.{System.Buffers.Text.Base64Url.EncodeToString(key.Sign(payload))}";
        return links.Verify(token, now) is null;
    }

    [Fact]
    public void Links_begin_with_the_public_address_else_with_the_listening_one()
    {
        Assert.Equal("https://quillmere.example/", NightLinks.BaseAddress(new() { PublicAddress = "https://quillmere.example" }).ToString());
        Assert.Equal("http://192.168.7.20:5080/", NightLinks.BaseAddress(new() { Listen = "192.168.7.20:5080" }).ToString());
        Assert.DoesNotContain("0.0.0.0", NightLinks.BaseAddress(new HttpOptions { Listen = "0.0.0.0:5080" }).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_key_is_made_once_and_only_the_service_may_read_it()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-key-").FullName;
        Assert.Equal(LinkKey.Load(folder).Id, LinkKey.Load(folder).Id);
        var path = Path.Combine(folder, "night-link.key");
        Assert.Equal(32, new FileInfo(path).Length);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        File.WriteAllText(path, "short");
        Assert.Contains("delete it", Assert.Throws<InvalidDataException>(() => LinkKey.Load(folder)).Message, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }
}
