using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Halfsplit.Architecture.Tests.House;

/// <summary>What a compiled assembly refers to, read from its metadata without loading it.</summary>
/// <param name="References">The names of the assemblies it refers to.</param>
/// <param name="Uses">The types and members of other assemblies that its code names.</param>
internal sealed record CompiledAssembly(string Name, IReadOnlyList<string> References, IReadOnlyList<MemberUse> Uses)
{
    /// <summary>Reads the assembly of that name from beside this test.</summary>
    public static CompiledAssembly Read(string name)
    {
        using var stream = File.OpenRead(Path.Combine(AppContext.BaseDirectory, name + ".dll"));
        using var file = new PEReader(stream);
        var metadata = file.GetMetadataReader();

        var references = metadata.AssemblyReferences
            .Select(handle => metadata.GetString(metadata.GetAssemblyReference(handle).Name));
        var types = metadata.TypeReferences.Select(handle => new MemberUse(NameOf(metadata, handle)));
        var members = metadata.MemberReferences.Select(handle => Use(metadata, metadata.GetMemberReference(handle))).OfType<MemberUse>();
        return new CompiledAssembly(name, [.. references], [.. types, .. members]);
    }

    private static MemberUse? Use(MetadataReader metadata, MemberReference member)
    {
        // Members of generic instances stand on a type specification; their type is among the type references all the same.
        if (member.Parent.Kind is not HandleKind.TypeReference)
            return null;

        var type = NameOf(metadata, (TypeReferenceHandle)member.Parent);
        var name = metadata.GetString(member.Name);
        if (member.GetKind() is MemberReferenceKind.Field)
            return new MemberUse(type, name);

        // ECMA-335, II.23.2.1: header, (generic count,) parameter count, return type, parameters.
        var signature = metadata.GetBlobReader(member.Signature);
        if (signature.ReadSignatureHeader().IsGeneric)
            signature.ReadCompressedInteger();

        var parameters = signature.ReadCompressedInteger();
        var returnsNothing = signature.ReadSignatureTypeCode() is SignatureTypeCode.Void;
        var takesTextFirst = returnsNothing && parameters > 0 && signature.ReadSignatureTypeCode() is SignatureTypeCode.String;
        return new MemberUse(type, name, parameters, takesTextFirst);
    }

    private static string NameOf(MetadataReader metadata, TypeReferenceHandle handle)
    {
        var type = metadata.GetTypeReference(handle);
        var name = metadata.GetString(type.Name);
        if (type.ResolutionScope.Kind is HandleKind.TypeReference)
            return $"{NameOf(metadata, (TypeReferenceHandle)type.ResolutionScope)}+{name}";

        var space = metadata.GetString(type.Namespace);
        return space.Length == 0 ? name : $"{space}.{name}";
    }
}
