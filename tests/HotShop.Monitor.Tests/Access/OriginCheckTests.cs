using HotShop.Monitor.Web.Access;
using Microsoft.AspNetCore.Http;
using Xunit;

namespace HotShop.Monitor.Tests.Access;

public sealed class OriginCheckTests
{
    static readonly Uri studio = new("https://quillmere.example/");

    [Theory]
    [InlineData("localhost:5080", "same-origin", "http://localhost:5080")]
    [InlineData("localhost:5080", null, "http://localhost:5080")]
    [InlineData("192.168.7.20:5080", null, "http://192.168.7.20:5080")]
    [InlineData("quillmere.example", "same-origin", "https://quillmere.example")]
    [InlineData("quillmere.example:443", null, "https://quillmere.example")]
    [InlineData("127.0.0.1:5080", null, "https://quillmere.example")]   // behind a proxy that rewrites the host
    [InlineData("localhost:5080", "same-origin", "null")]               // a page without referrer
    [InlineData("localhost:5080", null, null)]                           // a program, no browser
    public void Our_own_pages_and_programs_may_change_things(string host, string? site, string? origin) =>
        Assert.Null(Objection("POST", "/api/logbook", host, site, origin));

    [Theory]
    [InlineData("localhost:5080", "cross-site", "https://evil.example")]
    [InlineData("localhost:5080", null, "https://evil.example")]
    [InlineData("localhost:5080", "same-site", "http://localhost:3000")]    // another program's page on this computer
    [InlineData("localhost:5080", null, "http://localhost:3000")]
    [InlineData("localhost:5080", null, "null")]                            // a sandboxed frame
    [InlineData("localhost:5080", "cross-site", null)]
    [InlineData("quillmere.example", null, "http://quillmere.example.evil.example")]
    [InlineData("quillmere.example", null, "https://quillmere.example@evil.example")]
    [InlineData("192.168.7.20:5080", null, "http://192.168.7.20")]
    [InlineData("localhost:5080", null, "file:///home/x.html")]
    [InlineData("localhost:5080", null, "")]
    public void A_page_of_somebody_else_may_not(string host, string? site, string? origin)
    {
        foreach (var method in new[] { "POST", "PUT", "PATCH", "DELETE" })
            Assert.NotNull(Objection(method, "/api/logbook", host, site, origin));
    }

    [Fact]
    public void Looking_is_allowed_from_anywhere() => Assert.Null(Objection("GET", "/api/appliances", "localhost:5080", "cross-site", "https://evil.example"));

    [Fact]
    public void A_page_opened_by_a_signed_link_may_act_without_saying_where_it_comes_from()
    {
        Assert.Null(Objection("POST", "/night/furnace-1", "192.168.7.20:5080", null, "null"));
        Assert.NotNull(Objection("POST", "/night/furnace-1", "192.168.7.20:5080", null, "https://evil.example"));
        Assert.NotNull(Objection("POST", "/nightly", "192.168.7.20:5080", null, "null"));
    }

    [Fact]
    public void Without_origin_the_referrer_counts()
    {
        Assert.NotNull(OriginCheck.Objection(new("POST", "/api/logbook", new HostString("localhost:5080"), null, null, "https://evil.example/page"), studio));
        Assert.Null(OriginCheck.Objection(new("POST", "/api/logbook", new HostString("localhost:5080"), null, null, "http://localhost:5080/pot"), studio));
    }

    static string? Objection(string method, string path, string host, string? site, string? origin) =>
        OriginCheck.Objection(new(method, path, new HostString(host), site, origin, null), studio);
}
