using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Tests;

/// <summary>
/// Everything a circuit holds, property by property, as text: two circuits are the same exactly if their dumps are.
/// Goes by reflection, so that a property added to the model and forgotten by the writer is found.
/// </summary>
internal static class CircuitDump
{
    public static string Of(Circuit circuit)
    {
        var text = new StringBuilder();
        Add(text, circuit, 0);
        return text.ToString();
    }

    private static void Add(StringBuilder text, object? value, int depth)
    {
        switch (value)
        {
            case null:
                text.Append("null\n");
                break;
            case string s:
                text.Append('"').Append(s).Append("\"\n");
                break;
            case double or int or bool or Enum:
                text.Append(Convert.ToString(value, CultureInfo.InvariantCulture)).Append('\n');
                break;
            case IDictionary map:
                text.Append("map\n");
                foreach (DictionaryEntry entry in map)
                {
                    text.Append(' ', 2 * depth).Append(entry.Key).Append(" = ");
                    Add(text, entry.Value, depth + 1);
                }

                break;
            case IEnumerable list:
                text.Append("list\n");
                foreach (var item in list)
                {
                    text.Append(' ', 2 * depth).Append("- ");
                    Add(text, item, depth + 1);
                }

                break;
            default:
                text.Append(value.GetType().Name).Append('\n');
                foreach (var property in Properties(value.GetType()))
                {
                    text.Append(' ', 2 * depth).Append(property.Name).Append(": ");
                    Add(text, property.GetValue(value), depth + 1);
                }

                break;
        }
    }

    private static IEnumerable<PropertyInfo> Properties(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0)
            .OrderBy(p => p.Name, StringComparer.Ordinal);
}
