using System.Globalization;
using System.Security.Cryptography;

namespace PlantWatch.Server.Ingest.Devices;

/// <summary>A device's password as it is kept: PBKDF2 with SHA-512, written <c>pbkdf2-sha512:rounds:salt:hash</c>.</summary>
/// <remarks>
/// Passwords are made here, by chance, of 130 bits: nobody can try them all, however fast one try is. So the rounds are few, and a hall of devices
/// that come back at once after a power cut is let in within seconds.
/// </remarks>
internal sealed record DevicePassword
{
    private const string Kind = "pbkdf2-sha512";
    private const int Rounds = 10_000, MostRounds = 1_000_000, SaltBytes = 16, HashBytes = 32;

    // Without those that are read for one another.
    private const string Signs = "abcdefghijkmnpqrstuvwxyz23456789";
    private const int Length = 26;

    private readonly int _rounds;
    private readonly byte[] _salt, _hash;

    private DevicePassword(int rounds, byte[] salt, byte[] hash) => (_rounds, _salt, _hash) = (rounds, salt, hash);

    /// <summary>What nobody's password is, to be compared with where there is no such account: the answer takes as long.</summary>
    public static DevicePassword Nobodys { get; } = Of(NewClear());

    /// <summary>A new password, to be shown once.</summary>
    public static string NewClear() => RandomNumberGenerator.GetString(Signs, Length);

    /// <summary>How a password is kept.</summary>
    public static DevicePassword Of(string clear)
    {
        var salt = RandomNumberGenerator.GetBytes(SaltBytes);
        return new(Rounds, salt, Derive(System.Text.Encoding.UTF8.GetBytes(clear), salt, Rounds));
    }

    /// <summary>Reads what <see cref="ToString"/> wrote; null for anything else.</summary>
    public static DevicePassword? Read(string text)
    {
        var (salt, hash) = (new byte[SaltBytes], new byte[HashBytes]);
        return text.Split(':') is [Kind, var rounds, var salted, var hashed]
            && int.TryParse(rounds, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= Rounds and <= MostRounds
            && Convert.TryFromBase64String(salted, salt, out var s) && s == SaltBytes && Convert.TryFromBase64String(hashed, hash, out var h) && h == HashBytes
            ? new(count, salt, hash) : null;
    }

    /// <summary>True for the password, in a time that says nothing of how near another one is.</summary>
    public bool Is(ReadOnlySpan<byte> clear) => CryptographicOperations.FixedTimeEquals(Derive(clear, _salt, _rounds), _hash);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kind}:{_rounds}:{Convert.ToBase64String(_salt)}:{Convert.ToBase64String(_hash)}");

    private static byte[] Derive(ReadOnlySpan<byte> clear, byte[] salt, int rounds) => Rfc2898DeriveBytes.Pbkdf2(clear, salt, rounds, HashAlgorithmName.SHA512, HashBytes);
}
