using System.Reflection;
using Halfsplit.Cli.Settings;
using Xunit;

namespace Halfsplit.Cli.Tests.Settings;

/// <summary>The help names the value that an option has where it is not given.</summary>
public sealed class UsualValuesTests
{
    [Fact]
    public void What_the_help_calls_usual_is_what_the_option_starts_with()
    {
        var held = 0;
        foreach (var settings in typeof(VerbSettings).Assembly.GetTypes().Where(t => t.IsAssignableTo(typeof(VerbSettings)) && !t.IsAbstract))
        {
            foreach (var option in settings.GetProperties())
            {
                // One text may serve options that start from different rows of the table.
                if (option.GetCustomAttribute<SaysAttribute>() is { } says && UsualValues.Of(says.Code) is { } usual
                    && option.GetValue(Activator.CreateInstance(settings)) is { } value && value is double or int)
                {
                    Assert.True(usual == Convert.ToDouble(value, null), $"{settings.Name}.{option.Name} starts with {value}, its help says {usual}");
                    held++;
                }
            }
        }

        Assert.True(held >= 10, $"{held}");
    }
}
