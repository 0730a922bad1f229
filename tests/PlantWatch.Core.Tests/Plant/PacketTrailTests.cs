using System.Text.Json;
using PlantWatch.Core.Plant;

namespace PlantWatch.Core.Tests.Plant;

/// <summary>A trail shares its shelf with what grows from it: nobody may notice.</summary>
public sealed class PacketTrailTests
{
    [Fact]
    public void Two_trails_that_grow_from_one_do_not_see_each_other_and_leave_it_as_it_was()
    {
        var root = With(PacketTrail.Of(Packets(0, 100)), Packets(100, 1));
        var left = With(root, Packets(1000, 3));
        var right = With(root, Packets(2000, 3));
        Assert.Equal(Packets(0, 101), root);
        Assert.Equal([.. Packets(0, 101), .. Packets(1000, 3)], left);
        Assert.Equal([.. Packets(0, 101), .. Packets(2000, 3)], right);
        Assert.Equal([.. Packets(0, 101), .. Packets(1000, 3), .. Packets(3000, 1)], With(left, Packets(3000, 1)));
    }

    [Fact]
    public void Many_may_grow_one_trail_at_once()
    {
        var root = PacketTrail.Of(Packets(0, 10));
        var grown = new PacketTrail[64];
        Parallel.For(0, grown.Length, i => grown[i] = Enumerable.Range(0, 50).Aggregate(root, (trail, j) => With(trail, Packets((1000 * i) + j, 1))));
        for (var i = 0; i < grown.Length; i++) Assert.Equal([.. Packets(0, 10), .. Packets(1000 * i, 50)], grown[i]);
    }

    [Fact]
    public void It_forgets_the_oldest_of_a_session_that_holds_too_much_as_a_plain_list_would()
    {
        var (chance, trail, list) = (new Random(7), PacketTrail.Empty, new List<RememberedPacket>());
        for (var i = 0; i < 5000; i++)
        {
            var packet = new RememberedPacket(chance.Next(chance.Next(1, 12)), i % 65535, i, (ulong)i);
            var growing = trail.Grow();
            growing.Add(packet);
            list.Add(packet);
            if (list.Count > 100)
            {
                growing.ForgetOldestBeyond(8);
                list.Remove(list.First(p => list.Count(q => q.Session == p.Session) > 8));
            }

            trail = growing.Seal();
            Assert.Equal(list.Count, trail.Length);
            if (i % 100 == 0) Assert.Equal(list, trail);
        }

        Assert.Equal(list, trail);
    }

    [Fact]
    public void One_that_was_left_half_grown_does_not_stand_in_the_way()
    {
        var root = PacketTrail.Of(Packets(0, 10));
        root.Grow().Add(Packets(500, 1).Single());
        Assert.Equal([.. Packets(0, 10), .. Packets(20, 2)], With(root, Packets(20, 2)));
        Assert.Equal(Packets(0, 10), root);
    }

    [Fact]
    public void A_trail_is_written_as_a_plain_array_and_read_back_the_same()
    {
        var trail = PacketTrail.Of(Packets(0, 5));
        var json = JsonSerializer.Serialize(trail, PlantJson.Options);
        Assert.Equal(JsonSerializer.Serialize(Packets(0, 5).ToArray(), PlantJson.Options), json);
        Assert.Equal(trail, JsonSerializer.Deserialize<PacketTrail>(json, PlantJson.Options));
    }

    private static PacketTrail With(PacketTrail trail, IEnumerable<RememberedPacket> more)
    {
        var growing = trail.Grow();
        foreach (var packet in more) growing.Add(packet);
        return growing.Seal();
    }

    private static IEnumerable<RememberedPacket> Packets(int from, int count) => Enumerable.Range(from, count).Select(i => new RememberedPacket(i % 3, (i % 65535) + 1, i, (ulong)i * 7919));
}
