// Time of one Voronoi diagram of line segments by Boost.Polygon, as an anchor for ours.
// Reads a count and then four 32-bit integers a segment from the file named first, builds the diagram as often as the second
// argument says, and prints the least processor time in milliseconds and the number of edges.
#include <boost/polygon/voronoi.hpp>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

struct Point {
  int x;
  int y;
};

struct Segment {
  Point from;
  Point to;
};

namespace boost {
namespace polygon {
template <>
struct geometry_concept<Point> {
  typedef point_concept type;
};
template <>
struct point_traits<Point> {
  typedef int coordinate_type;
  static coordinate_type get(const Point& point, orientation_2d orient) {
    return orient == HORIZONTAL ? point.x : point.y;
  }
};
template <>
struct geometry_concept<Segment> {
  typedef segment_concept type;
};
template <>
struct segment_traits<Segment> {
  typedef int coordinate_type;
  typedef Point point_type;
  static point_type get(const Segment& segment, direction_1d dir) {
    return dir.to_int() ? segment.to : segment.from;
  }
};
}  // namespace polygon
}  // namespace boost

int main(int argc, char** argv) {
  if (argc < 3) {
    return 2;
  }
  std::FILE* file = std::fopen(argv[1], "rb");
  std::int32_t count = 0;
  if (file == nullptr || std::fread(&count, sizeof count, 1, file) != 1) {
    return 2;
  }
  std::vector<std::int32_t> numbers(static_cast<std::size_t>(count) * 4);
  if (std::fread(numbers.data(), sizeof(std::int32_t), numbers.size(), file) != numbers.size()) {
    return 2;
  }
  std::fclose(file);
  std::vector<Segment> segments;
  segments.reserve(static_cast<std::size_t>(count));
  for (std::size_t i = 0; i < numbers.size(); i += 4) {
    segments.push_back({{numbers[i], numbers[i + 1]}, {numbers[i + 2], numbers[i + 3]}});
  }
  double least = 1e300;
  std::size_t edges = 0;
  for (int run = 0; run < std::atoi(argv[2]); run++) {
    boost::polygon::voronoi_diagram<double> diagram;
    const std::clock_t start = std::clock();
    boost::polygon::construct_voronoi(segments.begin(), segments.end(), &diagram);
    const double ms = 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    least = ms < least ? ms : least;
    edges = diagram.num_edges();
  }
  std::printf("%.3f %zu\n", least, edges);
  return 0;
}
