using HotShop.Monitor.Configuration;
using HotShop.Monitor.Web.Access;
using Microsoft.AspNetCore.Http;
using Xunit;

namespace HotShop.Monitor.Tests.Access;

public sealed class HostCheckTests
{
    [Theory]
    [InlineData("127.0.0.1:5080", "localhost:5080", true)]
    [InlineData("127.0.0.1:5080", "127.0.0.1:5080", true)]
    [InlineData("127.0.0.1:5080", "[::1]:5080", true)]
    [InlineData("127.0.0.1:5080", "quillmere.example", true)]       // the public address, through a proxy
    [InlineData("127.0.0.1:5080", "hotshop.lan", true)]             // http.allowedHosts
    [InlineData("127.0.0.1:5080", "LOCALHOST:5080", true)]
    [InlineData("127.0.0.1:5080", "rebound.evil.example:5080", false)]
    [InlineData("127.0.0.1:5080", "localhost.evil.example", false)]
    [InlineData("127.0.0.1:5080", "192.168.7.20:5080", false)]
    [InlineData("127.0.0.1:5080", "", false)]
    [InlineData("0.0.0.0:5080", "192.168.7.20:5080", true)]
    [InlineData("0.0.0.0:5080", "[fd00::20]:5080", true)]
    [InlineData("0.0.0.0:5080", "rebound.evil.example:5080", false)]
    [InlineData("192.168.7.20:5080", "192.168.7.20:5080", true)]
    public void The_pages_answer_to_their_own_names_alone(string listen, string host, bool answers)
    {
        var http = new HttpOptions { Listen = listen, PublicAddress = "https://quillmere.example", AllowedHosts = ["hotshop.lan"] };
        Assert.Equal(answers, new HostCheck(new("unused", http)).Allows(new HostString(host)));
    }
}
