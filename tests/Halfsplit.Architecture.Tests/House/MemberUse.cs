namespace Halfsplit.Architecture.Tests.House;

/// <summary>A type of another assembly that compiled code names, with the member it calls there.</summary>
/// <param name="Type">With its namespace, such as <c>System.IO.File</c>; a nested type stands after a plus sign.</param>
/// <param name="Member">The method or field; null where only the type is named.</param>
/// <param name="Parameters">How many parameters the method takes; zero for a field.</param>
/// <param name="TakesTextFirst">Whether the first parameter is a string: a path, for a reader or writer of files.</param>
internal sealed record MemberUse(string Type, string? Member = null, int Parameters = 0, bool TakesTextFirst = false)
{
    public string Namespace => Type.LastIndexOf('.') is > 0 and var dot ? Type[..dot] : "";

    public override string ToString() => Member is null ? Type : $"{Type}.{Member}({Parameters})";
}
