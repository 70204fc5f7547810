using Halfsplit.App.Link;
using Xunit;

namespace Halfsplit.App.Tests.Link;

/// <summary>The check digit of 49 CFR 565.15(c). The numbers are made up; none is a vehicle's.</summary>
public sealed class VehicleNumberTests
{
    [Theory]
    // All ones: the weights add up to 89, and 89 leaves 1 when divided by 11.
    [InlineData("11111111111111111", VehicleNumberCheck.Fits)]
    // 8 in the first place alone: 8 × 8 = 64 leaves 9.
    [InlineData("80000000900000000", VehicleNumberCheck.Fits)]
    // 4 in the first place: 4 × 8 = 32 leaves 10, written X.
    [InlineData("40000000X00000000", VehicleNumberCheck.Fits)]
    // Z is 9, A is 1 and R is 9 by table III.
    [InlineData("Z0000000600000000", VehicleNumberCheck.Fits)]
    [InlineData("R0000000600000000", VehicleNumberCheck.Fits)]
    [InlineData("A0000000800000000", VehicleNumberCheck.Fits)]
    [InlineData(" 1111-1111 1111-1111 1 ", VehicleNumberCheck.Fits)]
    [InlineData("a0000000800000000", VehicleNumberCheck.Fits)]
    [InlineData("11111111211111111", VehicleNumberCheck.DigitDiffers)]
    [InlineData("1111111111111111", VehicleNumberCheck.WrongLength)]
    [InlineData("O1111111111111111", VehicleNumberCheck.WrongCharacter)]
    [InlineData("I1111111111111111", VehicleNumberCheck.WrongCharacter)]
    [InlineData("Q1111111111111111", VehicleNumberCheck.WrongCharacter)]
    [InlineData("", VehicleNumberCheck.Empty)]
    public void The_check_digit_is_reckoned(string typed, VehicleNumberCheck found) => Assert.Equal(found, VehicleNumber.Check(typed));

    [Fact]
    public void Any_one_wrong_digit_is_seen()
    {
        const string Right = "12345678X12345678";
        var digit = "0123456789X".First(d => VehicleNumber.Check(Right.Remove(8, 1).Insert(8, d.ToString())) == VehicleNumberCheck.Fits);
        var number = Right.Remove(8, 1).Insert(8, digit.ToString());
        for (var at = 0; at < 17; at++)
        {
            var other = number[at] == '3' ? '4' : '3';
            Assert.Equal(VehicleNumberCheck.DigitDiffers, VehicleNumber.Check(number.Remove(at, 1).Insert(at, other.ToString())));
        }
    }
}
