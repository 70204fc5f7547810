using Halfsplit.App.Link;
using Xunit;

namespace Halfsplit.App.Tests.Link;

public sealed class AddressTests
{
    [Theory]
    [InlineData("https://host.example/a/b/", "start", "", "")]
    [InlineData("https://host.example/a/b/#/", "start", "", "")]
    [InlineData("https://host.example/#/jobs", "jobs", "", "")]
    [InlineData("https://host.example/#/new/pump-feed/pump%20does%20not%20run", "new", "pump-feed", "pump does not run")]
    public void An_address_names_a_screen(string uri, string screen, string first, string second) =>
        Assert.Equal(new Address(screen, first, second), Address.Of(uri));

    [Theory]
    [InlineData("a/b")]
    [InlineData("50 % ü #1?")]
    public void What_goes_into_an_address_comes_out(string name)
    {
        var address = new Address("new", "sheet", name);

        Assert.Equal(address, Address.Of("https://host.example/x/" + address.ToString()[2..]));
    }
}
