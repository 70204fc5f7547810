using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Halfsplit.Jobs.Events;

/// <summary>An immutable list that is equal to another with equal items, so that events compare by content.</summary>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public readonly struct ValueList<T> : IEquatable<ValueList<T>>, IReadOnlyList<T>
{
    private readonly ImmutableArray<T> items;

    internal ValueList(ImmutableArray<T> items) => this.items = items;

    public int Count => items.IsDefault ? 0 : items.Length;

    public T this[int index] => items[index];

    public static bool operator ==(ValueList<T> left, ValueList<T> right) => left.Equals(right);

    public static bool operator !=(ValueList<T> left, ValueList<T> right) => !left.Equals(right);

    public bool Equals(ValueList<T> other) => AsSpan().SequenceEqual(other.AsSpan(), EqualityComparer<T>.Default);

    public override bool Equals(object? obj) => obj is ValueList<T> other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in AsSpan()) hash.Add(item);
        return hash.ToHashCode();
    }

    public ReadOnlySpan<T> AsSpan() => items.IsDefault ? [] : items.AsSpan();

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)(items.IsDefault ? [] : items)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public override string ToString() => string.Join(", ", this);
}

/// <summary>Makes <see cref="ValueList{T}"/>.</summary>
public static class ValueList
{
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => new([.. items]);
}
