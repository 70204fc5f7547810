using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Jobs.Practice;
using Xunit;

namespace Halfsplit.Evaluation.Tests;

/// <summary>The cars are drawn by code that shares nothing with what the engine reckons its odds by.</summary>
public sealed class IndependenceTests
{
    private static readonly string[] Likelihoods = ["Halfsplit.Diagnosis.Evidence", "Halfsplit.Diagnosis.Planning"];

    [Theory]
    [InlineData(typeof(CarLot), "Halfsplit.Evaluation.Cars")]
    [InlineData(typeof(PracticeCar), "Halfsplit.Jobs.Practice")]
    public void Whoever_draws_cars_uses_no_likelihoods(Type one, string space)
    {
        var used = TypesUsed(one.Assembly, space, out var looked);

        Assert.True(looked > 20);
        Assert.Contains("Halfsplit.Simulation.CircuitSimulator", used);
        Assert.DoesNotContain(used, t => Likelihoods.Any(l => t.StartsWith(l + ".", StringComparison.Ordinal))
            || t is "Halfsplit.Diagnosis.Investigation" or "Halfsplit.Diagnosis.Suspects.HypothesisSpace");
    }

    /// <summary>Types whose members the code of a namespace calls, by looking at every call in it.</summary>
    private static HashSet<string> TypesUsed(Assembly assembly, string space, out int looked)
    {
        using var file = new PEReader(File.OpenRead(assembly.Location));
        var reader = file.GetMetadataReader();
        var found = new HashSet<string>(StringComparer.Ordinal);
        looked = 0;
        foreach (var type in reader.TypeDefinitions.Select(reader.GetTypeDefinition))
        {
            var outer = type;
            while (!outer.GetDeclaringType().IsNil)
            {
                outer = reader.GetTypeDefinition(outer.GetDeclaringType());
            }

            // The engine's own player lives beside the cars in Jobs, and is no car.
            if (reader.GetString(outer.Namespace) != space || reader.GetString(outer.Name) is "EnginePlay" or "PlayScore")
            {
                continue;
            }

            foreach (var method in type.GetMethods().Select(reader.GetMethodDefinition).Where(m => m.RelativeVirtualAddress != 0))
            {
                looked++;
                var code = file.GetMethodBody(method.RelativeVirtualAddress).GetILBytes()!;
                for (var i = 0; i + 4 < code.Length; i++)
                {
                    // call, callvirt, newobj, ldsfld: a token follows. A stray match names a type that is used anyway.
                    if (code[i] is 0x28 or 0x6F or 0x73 or 0x7E && TypeOf(reader, BitConverter.ToInt32(code, i + 1)) is { } name)
                    {
                        found.Add(name);
                    }
                }
            }
        }

        return found;
    }

    private static string? TypeOf(MetadataReader reader, int token)
    {
        var table = (uint)token >> 24;
        var row = token & 0xFFFFFF;
        if (table != 0x0A || row == 0 || row > reader.MemberReferences.Count)
        {
            return null;
        }

        var parent = reader.GetMemberReference((MemberReferenceHandle)System.Reflection.Metadata.Ecma335.MetadataTokens.EntityHandle(token)).Parent;
        if (parent.Kind != HandleKind.TypeReference)
        {
            return null;
        }

        var type = reader.GetTypeReference((TypeReferenceHandle)parent);
        return $"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}";
    }
}
