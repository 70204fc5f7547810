using System.Globalization;
using Halfsplit.Testing;
using Xunit;

namespace Halfsplit.Architecture.Tests;

/// <summary>A run asked for under another culture is really under it, on every thread; any other is under the machine's own.</summary>
public sealed class CultureOfTheRunTests
{
    [Fact]
    public void The_culture_asked_for_is_in_force()
    {
        var name = Environment.GetEnvironmentVariable(CultureOfTheRun.Variable);
        if (string.IsNullOrEmpty(name))
        {
            Assert.Null(CultureInfo.DefaultThreadCurrentCulture);
            return;
        }

        var onAnotherThread = "";
        var thread = new Thread(() => onAnotherThread = CultureInfo.CurrentCulture.Name);
        thread.Start();
        thread.Join();

        Assert.Equal(name, CultureInfo.CurrentCulture.Name);
        Assert.Equal(name, onAnotherThread);
        // Both cultures of the test command write a decimal comma; made-up culture data would write a point.
        Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
    }
}
