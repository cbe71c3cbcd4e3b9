using HotShop.Monitor.Web.Pages.Bills;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

public class TypedNumberTests
{
    [Theory]
    [InlineData("1.843,20", ",", "1843.20")]
    [InlineData("1843,2", ",", "1843.2")]
    [InlineData("1.843", ",", "1843")]          // a German thousand
    [InlineData("1843.20", ",", "1843.20")]     // no thousand: the other country's decimals
    [InlineData("1 843,20", ",", "1843.20")]
    [InlineData("1'843.20", ".", "1843.20")]
    [InlineData("1,843.20", ".", "1843.20")]
    [InlineData("12,345,678", ".", "12345678")]
    [InlineData("1843,5", ".", "1843.5")]
    [InlineData("-12,30", ",", "-12.30")]
    public void A_number_is_read_as_its_country_writes_it(string typed, string mark, string plain) => Assert.Equal(plain, TypedNumber.Plain(typed, mark));

    [Theory, InlineData("1.84,3", ","), InlineData("1,2,3", ","), InlineData("about 20", ","), InlineData("1,2.3,4", ".")]
    public void What_is_no_number_is_left_as_it_was_typed(string typed, string mark) => Assert.Equal(string.Concat(typed.Where(c => c != ' ')), string.Concat(TypedNumber.Plain(typed, mark)!.Where(c => c != ' ')));

    [Theory, InlineData(null), InlineData("  ")]
    public void Nothing_typed_is_nothing(string? typed) => Assert.Null(TypedNumber.Plain(typed, ","));
}
